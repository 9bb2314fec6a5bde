/** Where the turns of a star come from. */
export type StarSource =
  /** The legacy cross pattern of ASME PCC-1, list by list. */
  | 'asme-pcc-1'
  /** The same by fours around the quarters, for a count that is not in that list. */
  | 'after-asme-pcc-1'
  | 'common-practice'

/** The counts for which the lists of the legacy cross pattern are checked. */
const publishedCounts: readonly number[] = [4, 8, 12, 16, 24]

/**
 * The order of a star on a circle of `count` places numbered clockwise from 0. Multiples of four go round the quarters
 * as the legacy cross pattern of ASME PCC-1 does; other even counts by opposite pairs; 5 and 7 leave one out at each
 * step, as wheels do; more odd ones go as straight across as there is a place: common practice.
 */
export function star(count: number): number[] {
  if (count % 4 === 0) {
    const quarter = count / 4
    return spread(quarter).flatMap((place) => [0, 2, 1, 3].map((turn) => place + turn * quarter))
  }
  if (count % 2 === 0) {
    const half = count / 2
    return spread(half).flatMap((place) => [place, place + half])
  }
  const step = count < 9 ? 2 : (count - 1) / 2
  return Array.from({ length: count }, (_, turn) => (turn * step) % count)
}

/** Where the star of so many places comes from. */
export function starSource(count: number): StarSource {
  if (publishedCounts.includes(count)) return 'asme-pcc-1'
  return count % 4 === 0 ? 'after-asme-pcc-1' : 'common-practice'
}

/** The first places of the groups, as far apart as the published lists have them. */
function spread(count: number): number[] {
  if (count === 0) return []
  if (count % 2 === 0) return spread(count / 2).flatMap((place) => [place, place + count / 2])
  const step = count > 3 ? 2 : 1
  return Array.from({ length: count }, (_, turn) => (turn * step) % count)
}
