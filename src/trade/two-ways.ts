import type { NotUnderstood } from './reading.ts'

/** A text that can be read in two ways: which was meant is not guessed. `nearest` is the first of the two. */
export interface TwoWays extends NotUnderstood<'two-ways'> {
  /** Both readings, as they would be understood. */
  ways: readonly [string, string]
}

/** A reading that stops because the text has two meanings. */
export function twoWays(part: string, one: string, other: string): TwoWays {
  return { understood: false, code: 'two-ways', part, nearest: one, ways: [one, other] }
}
