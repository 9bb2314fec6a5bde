import { Gates } from '../plan/gates.ts'
import { leftovers } from '../plan/leftovers.ts'
import { wholeSecond } from '../plan/whole-second.ts'
import type { Entry } from './entry.ts'
import type { State } from './state.ts'

/**
 * Throws where a job is cleared or closed over what is left over, started before it was cleared, or closed before it was
 * started: the laws that a command is held to (`decide/job.ts`), held once more where an entry is read.
 */
export function refuseTooEarly(state: State, { type, at, by }: Entry): void {
  if (type === 'started' && !state.cleared) throw new Error('it was not cleared')
  if (type === 'closed' && !state.started) throw new Error('it was not started')
  if (type !== 'cleared' && type !== 'closed') return
  // As it was when it was decided: what sets lets go at a second of its own.
  const clock = { at: wholeSecond(new Date(at)), today: at.slice(0, 10), by }
  const [left] = leftovers(new Gates({ ...state, clock }))
  if (left) throw new Error(`something is left over: ${left.code}`)
}
