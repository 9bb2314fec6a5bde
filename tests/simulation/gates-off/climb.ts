import type { JobOutcome } from '../run-job.ts'

/** What came of a mistake at a wall of which so many gates were off. */
export interface Climb extends JobOutcome {
  /** Which of the walls. */
  wall: number
  /** How many of its gates were off, from the first. */
  off: number
}
