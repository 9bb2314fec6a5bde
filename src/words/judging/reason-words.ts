import type { State } from '../../journal/state.ts'
import type { PieceId } from '../../ledger/piece.ts'
import type { JudgingReason } from '../../plan/judging/judging.ts'
import { newWords, say } from '../cures.ts'
import { agree, pieceName } from '../pieces.ts'
import { compareParts } from './compare-words.ts'
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
        cure: `${measureFirst(state, reason)}${say(`ok ${reason.check}`)} if good, else ${say(`judge ${reason.piece} replace because ...`)}`,
      }
    case 'piece-judged':
      return {
        what: `${name} ${agree(state, reason.piece, 'is', 'are')} ${judgedText(state, reason)}`,
        cure: `${offFirst(state, [reason.piece])}${
          reason.verdict === 'replace'
            ? `${newWords(state, reason.piece, `${countOf(state, reason.piece)}${reason.piece}`)} when ${agree(state, reason.piece, 'the new one is', 'the new ones are')} here`
            : `${say(`judge ${reason.piece} fit again because ...`)} when that is done`
        }`,
      }
    case 'compare-due':
    case 'compare-wrong':
      return compareParts(state, reason)
    default:
      return reason satisfies never
  }
}

/** What was decided about a piece, with what and why: `to be replaced, with cylinder head, because cracked`. */
export function judgedText(
  state: State,
  { piece, verdict }: Extract<JudgingReason, { code: 'piece-judged' }>,
): string {
  const { reason: why, along } = state.verdicts.get(piece) ?? {}
  const ground = along ? `, with ${pieceName(state, along)}` : ''
  return `${VERDICTS[verdict]}${ground}${why ? `, because ${why}` : ''}`
}

/** What is to be measured is measured before a word can pass it; `others`: what stands behind it, where it is one of several. */
export function measureFirst(
  state: State,
  { check, piece }: Extract<JudgingReason, { code: 'check-due' }>,
  others = '',
): string {
  const { kind, what = [] } = state.checks.get(check) ?? {}
  return kind === 'measure' ? `${say(`measure ${what[0] ?? 'size'} of ${piece}: ...`)}${others}, then ` : ''
}

/** What is condemned on the machine has to come off first. */
export function offFirst(state: State, pieces: readonly PieceId[]): string {
  const on = pieces.map((id) => state.ledger.accounts.get(id)).find((each) => each?.at.has('machine'))
  return on ? `${say(`reopen ${on.piece.step} because ...`)}, then ` : ''
}

/** A lot is replaced as a whole. */
function countOf(state: State, piece: PieceId): string {
  const { should = 1 } = state.ledger.accounts.get(piece) ?? {}
  return should > 1 ? `${should} ` : ''
}
