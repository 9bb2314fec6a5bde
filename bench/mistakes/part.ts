import type { Goal } from '../../tests/simulation/measure/goal.ts'

/** What one part of the run came to. */
export interface Part {
  goals: Goal[]
  /** Which seeds, in words. */
  seeds: string
  /** What a job takes, in words. */
  costs: string[]
}
