import type { PlanRow } from '../../session/views.ts'
import { SIGNS, type Sign } from '../signs.ts'

/** The sign of a step on the way back. One that waits to be done again says so, even while it is blocked. */
export function stepSign({ standing, again }: Pick<PlanRow, 'standing' | 'again'>): Sign {
  if (again && standing === 'blocked') return { ...SIGNS.blocked, word: 'BLOCKED, DO AGAIN' }
  return SIGNS[standing]
}
