import { type Bounded, exact } from './bounds.ts'

/** A point of a surface: where it lies, and its height; mm. */
export interface SurfacePoint {
  x: number
  y: number
  z: number
}

export interface PeakToValley extends Bounded {
  /** Which points stand out most, up and down, by their index. */
  peak: number
  valley: number
}

/**
 * How far the points reach from above to below the best plane: the one for which the squares of the distances add up
 * to least (the least squares reference plane of ISO 12781-1, from memory). Heights are small beside the surface, so
 * distances are taken along z. Points that all lie on one line have a best line. Each height may be off by `doubt`
 * either way: the bounds are the worst that such errors can do together, the plane's own share included.
 */
export function peakToValley(points: readonly SurfacePoint[], doubt: number): PeakToValley {
  const lever = leverage(points)
  const heights = points.map(({ z }) => z)
  const above = lever.map((row, i) => (heights[i] ?? 0) - dot(row, heights))
  const ownWeights = lever.map((_, i) => errorWeight(lever, i))
  const byHeight = above.map((_, i) => i).sort((i, j) => (above[j] ?? 0) - (above[i] ?? 0))
  const byDepth = above.map((_, i) => i).sort((i, j) => (above[i] ?? 0) - (above[j] ?? 0))
  const worst: PeakToValley = { mm: 0, lowMm: 0, highMm: 0, peak: 0, valley: 0 }
  for (const i of byHeight) {
    for (const j of byDepth) {
      const apart = (above[i] ?? 0) - (above[j] ?? 0)
      if (apart < 0) break
      if (apart > worst.mm) Object.assign(worst, { mm: apart, peak: i, valley: j })
      // Together two points are off by no more than each alone: most pairs are out of question by that.
      const atMost = doubt * ((ownWeights[i] ?? 0) + (ownWeights[j] ?? 0))
      if (i === j || (apart <= worst.lowMm && apart + atMost <= worst.highMm)) continue
      const off = doubt * errorWeight(lever, i, j)
      worst.lowMm = Math.max(worst.lowMm, apart - off)
      worst.highMm = Math.max(worst.highMm, apart + off)
    }
  }
  return { ...worst, mm: exact(worst.mm), lowMm: exact(worst.lowMm), highMm: exact(worst.highMm) }
}

/** How strongly errors of all heights together can move a point, as against another one if that is given. */
function errorWeight(lever: readonly (readonly number[])[], i: number, j?: number): number {
  const [rowI = [], rowJ = []] = [lever[i], j === undefined ? [] : lever[j]]
  return rowI.reduce((sum, weight, k) => {
    const own = (k === i ? 1 : 0) - (k === j ? 1 : 0)
    return sum + Math.abs(own - weight + (rowJ[k] ?? 0))
  }, 0)
}

/** For each point, the weight of every height in that of the best plane there. */
function leverage(points: readonly SurfacePoint[]): number[][] {
  const count = points.length
  const meanX = points.reduce((sum, { x }) => sum + x, 0) / count
  const meanY = points.reduce((sum, { y }) => sum + y, 0) / count
  const centred = points.map(({ x, y }) => ({ x: x - meanX, y: y - meanY }))
  const xx = centred.reduce((sum, { x }) => sum + x * x, 0)
  const xy = centred.reduce((sum, { x, y }) => sum + x * y, 0)
  const yy = centred.reduce((sum, { y }) => sum + y * y, 0)
  const determinant = xx * yy - xy * xy
  const isLine = determinant <= 1e-12 * (xx + yy) ** 2
  return centred.map((p) =>
    centred.map((q) => {
      if (isLine) return 1 / count + (xx + yy === 0 ? 0 : (p.x * q.x + p.y * q.y) / (xx + yy))
      const across = p.x * (yy * q.x - xy * q.y) + p.y * (xx * q.y - xy * q.x)
      return 1 / count + across / determinant
    }),
  )
}

function dot(weights: readonly number[], heights: readonly number[]): number {
  return weights.reduce((sum, weight, i) => sum + weight * (heights[i] ?? 0), 0)
}
