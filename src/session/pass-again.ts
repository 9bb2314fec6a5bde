import type { TighteningId } from '../plan/facts.ts'
import type { NextTurn } from '../plan/tightening.ts'
import { entriesInForce } from './in-force.ts'
import type { Session } from './session.ts'

/**
 * Whether the pass that comes next was begun before: work stopped in the middle of a torque pass, so none of its ticks
 * stands and it starts again at its first fastener.
 */
export function startsAgain(
  session: Session,
  id: TighteningId,
  { pass, through, suspect }: NextTurn,
): boolean {
  if (suspect || through > 0) return false
  const last = entriesInForce(session).findLast(
    (entry) => entry.type === 'tightened' && entry.tightening === id,
  )
  return last?.type === 'tightened' && last.pass === pass
}
