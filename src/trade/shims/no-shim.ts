import { clearanceWith, fits, halfTicksOff, type NeededShim, neededShim } from './needed-shim.ts'
import { type MeasuredValve, ticks } from './valve.ts'

/**
 * Why a valve gets no shim: it has no clearance, so that what it needs is not known; everything to be had is thinner or
 * thicker than it needs; its needs lie between two sizes; those that would do are needed by other valves; or there is
 * nothing to choose from.
 */
export type NoShimCode =
  | 'no-clearance'
  | 'above'
  | 'below'
  | 'between'
  | 'needed-elsewhere'
  | 'nothing-to-be-had'

export interface NoShim {
  code: NoShimCode
  /** What comes nearest of all that is to be had, and the clearance that it would leave; millimetres. */
  nearest: { size: number; clearance: number } | null
}

/** Why none of the sizes brings a valve within its range. `sizes`: all those on hand and for sale, in millimetres. */
export function whyNoShim(valve: MeasuredValve, sizes: readonly number[]): NoShim {
  if (valve.clearance <= 0) return { code: 'no-clearance', nearest: null }
  const needed = neededShim(valve)
  const [first, ...others] = sizes
  if (first === undefined) return { code: 'nothing-to-be-had', nearest: null }
  const size = others.reduce(
    (best, other) => (halfTicksOff(needed, other) < halfTicksOff(needed, best) ? other : best),
    first,
  )
  return { code: codeOf(needed, sizes), nearest: { size, clearance: clearanceWith(valve, size) } }
}

function codeOf(needed: NeededShim, sizes: readonly number[]): NoShimCode {
  if (sizes.some((size) => fits(needed, size))) return 'needed-elsewhere'
  if (sizes.every((size) => ticks(size) < ticks(needed.least))) return 'above'
  if (sizes.every((size) => ticks(size) > ticks(needed.most))) return 'below'
  return 'between'
}
