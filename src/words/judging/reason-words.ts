import type { State } from '../../journal/state.ts'
import type { JudgingReason } from '../../plan/judging.ts'
import { say } from '../cures.ts'
import { pieceName } from '../pieces.ts'
import { checkName, VERDICTS } from './names.ts'

/** Why a piece may not go back yet, with what lifts it. */
export function judgingWords(state: State, reason: JudgingReason): string {
  const { what, cure } = judgingParts(state, reason)
  return `${what}: ${cure}`
}

/** The same, taken apart for a table. */
export function judgingParts(state: State, reason: JudgingReason): { what: string; cure: string } {
  const name = pieceName(state, reason.piece)
  switch (reason.code) {
    case 'check-due':
      return {
        what: `${name} not checked (${checkName(state, reason.check)})`,
        cure: `${say(`ok ${reason.check}`)} if good, else ${say(`judge ${reason.piece} ...`)}`,
      }
    case 'piece-judged': {
      const why = state.verdicts.get(reason.piece)?.reason
      return {
        what: `${name} is ${VERDICTS[reason.verdict]}${why ? `, because ${why}` : ''}`,
        cure:
          reason.verdict === 'replace'
            ? `${say(`new ${reason.piece}`)} when the new one is here`
            : `${say(`judge ${reason.piece} fit again because ...`)} when that is done`,
      }
    }
    case 'compare-due':
      return {
        what: `${name} not compared with the old one, ${reason.old}`,
        cure: `lay them side by side, then ${say(`compare ${reason.piece}: alike`)}`,
      }
    case 'compare-wrong':
      return {
        what: `${name} is the wrong one`,
        cure: `${say(`send back ${reason.piece} because ...`)}, and ${say(`new ${reason.piece}`)} when the right one is here`,
      }
    default:
      return reason satisfies never
  }
}
