import type { State } from '../journal/state.ts'
import type { Leftover } from '../plan/leftovers.ts'
import { sentence } from './grammar.ts'
import { inSets } from './judging/group-words.ts'
import { type LabelCode, type LeftoverTold, leftoverSetText } from './leftovers.ts'

/** A row that tells one leftover, or several of one set at once; `leftover` is the first of them. */
export interface ToldLeftover extends LeftoverTold {
  leftover: Leftover
}

/** Leftovers in the order given; what is asked or was decided alike of the pieces of one set is one row. */
export function toldLeftovers(state: State, leftovers: readonly Leftover[], code: LabelCode): ToldLeftover[] {
  // Of a set, what is on the machine and what lies beside it are reached in two ways.
  const reached = (leftover: Leftover) =>
    'piece' in leftover && state.ledger.accounts.get(leftover.piece)?.at.has('machine') ? 'on' : 'off'
  return inSets(state, leftovers, reached).flatMap(([leftover, ...others]) =>
    leftover ? [{ leftover, ...leftoverSetText(state, [leftover, ...others], code) }] : [],
  )
}

/** The same, each as a line of its own. */
export function leftoverLines(state: State, leftovers: readonly Leftover[], code: LabelCode): string[] {
  return toldLeftovers(state, leftovers, code).map(({ leftover, what, where, undo }) => {
    const line = sentence(`${what}${isOnePhrase(leftover) ? '' : ':'} ${where}`)
    return undo === '' ? line : `${line} To reach it, undo: ${undo}.`
  })
}

/**
 * Whether what it is and where it is are one phrase, as of a piece and where it lies. What is owed of a thing is said after
 * it, and what is said of a piece that is not accepted is a sentence of its own, before where the piece belongs.
 */
export function isOnePhrase(leftover: Leftover): boolean {
  return 'piece' in leftover && !isJudgement(leftover)
}

function isJudgement({ code }: Leftover): boolean {
  return code === 'check-due' || code === 'piece-judged' || code === 'compare-due' || code === 'compare-wrong'
}
