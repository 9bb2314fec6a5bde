import fc from 'fast-check'
import { Matrix, SVD } from 'ml-matrix'
import { describe, expect, test } from 'vitest'
import { peakToValley, type SurfacePoint } from '../../../src/trade/measuring/best-plane.ts'

describe('best plane', () => {
  test('bumps that no plane can take up are found exactly on any plane', () => {
    // The bumps add up to nothing, and so do their moments in x and in y: the best plane is the one they sit on.
    const bumps = [
      [1, -2, 1],
      [-2, 4, -2],
      [1, -2, 1],
    ]
    const points = bumps.flatMap((row, y) =>
      row.map((bump, x) => ({ x: 40 * x, y: 30 * y, z: 5 + 0.25 * x - 0.5 * y + 0.01 * bump })),
    )
    expect(peakToValley(points, 0)).toMatchObject({ mm: 0.06, lowMm: 0.06, highMm: 0.06, peak: 4 })
  })

  test('points on one line have a best line', () => {
    const points = [0, 1, 2].map((x) => ({ x, y: 2 * x, z: x === 1 ? 0.03 : 0 }))
    // The line through three such points leaves -0.01, +0.02, -0.01.
    expect(peakToValley(points, 0)).toMatchObject({ mm: 0.03, peak: 1 })
  })

  test('agrees with the plane found by singular values', () => {
    fc.assert(
      fc.property(surface, (points) => {
        expect(peakToValley(points, 0).mm).toBeCloseTo(bySingularValues(points), 7)
      }),
    )
  })

  test('no errors of the heights lead out of the bounds', () => {
    fc.assert(
      fc.property(surface, fc.infiniteStream(fc.integer({ min: -1, max: 1 })), (points, signs) => {
        const { lowMm, highMm } = peakToValley(points, 0.005)
        const off = points.map((point) => ({ ...point, z: point.z + 0.005 * signs.next().value }))
        const { mm } = peakToValley(off, 0)
        expect(mm).toBeGreaterThanOrEqual(lowMm - 1e-9)
        expect(mm).toBeLessThanOrEqual(highMm + 1e-9)
      }),
    )
  })
})

const coordinate = fc.integer({ min: 0, max: 40 }).map((n) => n * 10)
const surface = fc
  .uniqueArray(
    fc.record({ x: coordinate, y: coordinate, z: fc.integer({ min: -300, max: 300 }).map((n) => n / 1000) }),
    { minLength: 4, maxLength: 16, selector: ({ x, y }) => `${x}/${y}` },
  )
  .filter(spansPlane)

function spansPlane([a, b, ...more]: SurfacePoint[]): boolean {
  return more.some((c) => a && b && (b.x - a.x) * (c.y - a.y) !== (b.y - a.y) * (c.x - a.x))
}

function bySingularValues(points: readonly SurfacePoint[]): number {
  const design = new Matrix(points.map(({ x, y }) => [1, x / 100, y / 100]))
  const heights = Matrix.columnVector(points.map(({ z }) => z))
  const plane = new SVD(design, { autoTranspose: true }).solve(heights)
  const above = Matrix.sub(heights, design.mmul(plane)).to1DArray()
  return Math.max(...above) - Math.min(...above)
}
