import type { State } from '../state.ts'
import { refuse } from './refuse.ts'

/** A day that is still to come, today among them, as `2026-12-04`; or a refusal. */
export function dayToCome(state: State, day: string): string {
  const { today } = state.clock
  return day < today ? refuse({ code: 'date-past', day, today }) : day
}
