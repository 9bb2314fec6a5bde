import type { State } from '../journal/state.ts'
import type { JudgingReason } from '../plan/judging.ts'
import type { Reason } from '../plan/reasons.ts'
import { groupText, setKey } from './judging/group-words.ts'
import { reasonText } from './reasons.ts'

/** A line that tells one reason, or several of one set at once; `reason` is the first of them. */
export interface ToldReason {
  reason: Reason
  text: string
}

/** Reasons in the order given; what is asked or was decided alike of the pieces of one set is one line. */
export function toldReasons(state: State, reasons: readonly Reason[]): ToldReason[] {
  const groups = new Map<string, Reason[]>()
  for (const [index, reason] of reasons.entries()) {
    const key = isOfAPiece(reason) ? setKey(state, reason) : `${index}`
    groups.set(key, [...(groups.get(key) ?? []), reason])
  }
  return [...groups.values()].flatMap((group) => {
    const [reason] = group
    if (!reason) return []
    const several = group.length > 1 ? group.filter(isOfAPiece) : []
    return [{ reason, text: several.length > 1 ? groupText(state, several) : reasonText(state, reason) }]
  })
}

/** The same, as lines alone. */
export function reasonLines(state: State, reasons: readonly Reason[]): string[] {
  return toldReasons(state, reasons).map(({ text }) => text)
}

type OfAPiece = Extract<JudgingReason, { code: 'check-due' | 'piece-judged' }>

function isOfAPiece(reason: Reason): reason is OfAPiece {
  return reason.code === 'check-due' || reason.code === 'piece-judged'
}
