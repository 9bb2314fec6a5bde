import type { SurfacePoint } from './best-plane.ts'
import { type Bounded, exact, largestOf } from './bounds.ts'

/**
 * The largest distance of a point of the grid from the straight line between two others of its row, column or
 * diagonal that lie no further apart than `spanMm`; undefined where no three points lie within that. Each height may
 * be off by `doubt` either way; the line between two others is off by no more than they are.
 */
export function worstWithin(
  rows: readonly (readonly SurfacePoint[])[],
  spanMm: number,
  doubt: number,
): Bounded | undefined {
  const bends = linesOf(rows).flatMap((line) => bendsOf(line, spanMm))
  const worst = largestOf(bends.map((mm) => ({ mm, lowMm: mm, highMm: mm })))
  if (!worst) return undefined
  const { mm } = worst
  return { mm: exact(mm), lowMm: exact(Math.max(0, mm - 2 * doubt)), highMm: exact(mm + 2 * doubt) }
}

function bendsOf(line: readonly SurfacePoint[], spanMm: number): number[] {
  return line.flatMap((from, first) =>
    line.slice(first + 2).flatMap((to, more) => {
      const length = Math.hypot(to.x - from.x, to.y - from.y)
      // Rounded steps, such as 6 in as 152.4 mm, may make the stretch a hair longer.
      if (length > spanMm * (1 + 1e-9)) return []
      const between = line.slice(first + 1, first + 2 + more)
      return between.map(({ x, y, z }) => {
        const share = Math.hypot(x - from.x, y - from.y) / length
        return Math.abs(z - (from.z + share * (to.z - from.z)))
      })
    }),
  )
}

/** Rows, columns, and diagonals both ways. */
function linesOf(rows: readonly (readonly SurfacePoint[])[]): SurfacePoint[][] {
  const [height, width] = [rows.length, rows[0]?.length ?? 0]
  const across = Array.from({ length: width }, (_, column) => column)
  const down = Array.from({ length: height }, (_, row) => row)
  const walk = (row: number, column: number, downBy: number, acrossBy: number): SurfacePoint[] => {
    const point = rows[row]?.[column]
    return point ? [point, ...walk(row + downBy, column + acrossBy, downBy, acrossBy)] : []
  }
  return [
    ...down.map((row) => walk(row, 0, 0, 1)),
    ...across.map((column) => walk(0, column, 1, 0)),
    ...across.map((column) => walk(0, column, 1, 1)),
    ...down.slice(1).map((row) => walk(row, 0, 1, 1)),
    ...across.map((column) => walk(0, column, 1, -1)),
    ...down.slice(1).map((row) => walk(row, width - 1, 1, -1)),
  ]
}
