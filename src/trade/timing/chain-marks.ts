import type { Stage } from './teeth.ts'

/**
 * After how many turns of the crank the marked links of a chain (or the marks of a belt) meet the marks of both sprockets
 * again: in between they stand elsewhere and nothing is wrong. The chain, the crank's and the cam's sprocket come round
 * together after the least common multiple of their teeth. `pins`: links from pin to pin, or teeth of the belt.
 */
export function turnsUntilMarksMeet({ driver, driven }: Stage, pins: number): number {
  return leastCommonMultiple(leastCommonMultiple(driver, driven), pins) / driver
}

function leastCommonMultiple(a: number, b: number): number {
  return (a / greatestCommonDivisor(a, b)) * b
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b)
}
