import type { Thread } from './thread.ts'

// Common practice: within 6 % (M12 and 1/2 inch are 5.5 % apart) a hand does not tell two threads from each other, and
// the smaller drops into the hole of the larger or the larger starts in that of the smaller.
const nearestShare = 0.06

/**
 * Whether two threads, one metric and one in inches, are so near in diameter that a hand takes one for the other: M8 and
 * 5/16, M10 and 3/8. Judged by the nominal diameters alone, because a bolt starts some turns in a hole of another pitch.
 */
export function lookAlikes(one: Thread, other: Thread): boolean {
  if (one.system === 'npt' || other.system === 'npt' || one.system === other.system) return false
  const larger = Math.max(one.diameterMm, other.diameterMm)
  return Math.abs(one.diameterMm - other.diameterMm) <= nearestShare * larger
}
