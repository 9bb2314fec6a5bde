import { withoutNoise } from '../number.ts'

/** The least and the most that a manual allows, in millimetres. */
export interface ClearanceRange {
  least: number
  most: number
}

/** A valve as it was measured, with the shim it was measured with; lengths in millimetres. */
export interface MeasuredValve {
  position: string
  clearance: number
  fitted: number
  wanted: ClearanceRange
}

// A hundred-thousandth of a millimetre: in it both 0.005 mm and 0.0001 in (2.54 µm) are whole numbers.
const ticksPerMillimetre = 100_000

/** A length as a whole number of ticks of 0.01 µm, so that sums and comparisons are exact. */
export function ticks(millimetres: number): number {
  return Math.round(millimetres * ticksPerMillimetre)
}

/** A length in ticks, or a half of one, as millimetres. */
export function fromTicks(count: number): number {
  return withoutNoise(count / ticksPerMillimetre)
}
