import type { State } from '../journal/state.ts'
import type { Reason } from '../plan/reasons.ts'
import { stepNumbers } from './grammar.ts'
import { groupText, inSets, isOfAPiece } from './judging/group-words.ts'
import { reasonText } from './reasons.ts'

/** A line that tells one reason, or several of one set at once; `reason` is the first of them. */
export interface ToldReason {
  reason: Reason
  text: string
}

/** Reasons in the order given; what is asked or was decided alike of the pieces of one set is one line. */
export function toldReasons(state: State, reasons: readonly Reason[]): ToldReason[] {
  return inSets(state, reasons).flatMap((set) => {
    const [reason] = set
    if (!reason) return []
    const several = set.length > 1 ? set.filter(isOfAPiece) : []
    return [{ reason, text: several.length > 1 ? groupText(state, several) : reasonText(state, reason) }]
  })
}

/** The same for a list of all steps: those that come before are only counted out, for they stand in it themselves. */
export function briefReasonLines(state: State, reasons: readonly Reason[]): string[] {
  const before = reasons.flatMap((reason) => (reason.code === 'step-before' ? [reason.step] : []))
  const others = reasons.filter(({ code }) => code !== 'step-before')
  const waits = before.length === 0 ? [] : [`waits for ${stepNumbers(before)}`]
  return [...reasonLines(state, others), ...waits]
}

/** The same, as lines alone. */
export function reasonLines(state: State, reasons: readonly Reason[]): string[] {
  return toldReasons(state, reasons).map(({ text }) => text)
}
