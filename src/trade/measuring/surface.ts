import { peakToValley, type SurfacePoint } from './best-plane.ts'
import { largestOf } from './bounds.ts'
import type { Worked } from './judged.ts'
import type { Measurement } from './measurement.ts'
import { eachReading, type WorkedOut } from './places.ts'
import { worstWithin } from './span.ts'

/** The largest gap; and, where the limit has a part for a span, the largest known to lie within such a span. */
export function underStraightEdge(measurement: Measurement): WorkedOut {
  const gaps = eachReading(measurement, 'flatness')
  const overall = largestOf(gaps)
  const { spanMm, mostInSpanMm } = measurement.limits ?? {}
  if (!overall || spanMm === undefined || mostInSpanMm === undefined)
    return { worked: overall ? [overall] : [], lacking: [] }
  // Under a longer straight-edge a gap is no smaller, so one within the limit is within it over any part as well.
  const isKnown = (gap: Worked) => (gap.spanMm ?? Infinity) <= spanMm || gap.highMm <= mostInSpanMm
  const inSpan = largestOf(gaps.filter(isKnown))
  return {
    worked: [overall, ...(inSpan ? [{ ...inSpan, what: 'flatness-in-span' as const, spanMm }] : [])],
    lacking: gaps.filter((gap) => !isKnown(gap)).map(({ at }) => ({ what: 'span', at })),
  }
}

/** From peak to valley about the best plane; and, where the limit has a part for a span, the worst within one. */
export function overGrid(measurement: Measurement): WorkedOut {
  const { readings, columns = 0, columnStepMm, rowStepMm, instrument, limits } = measurement
  const count = readings.length / columns
  if (columns < 2 || count < 2 || !Number.isInteger(count)) return { worked: [], lacking: [{ what: 'grid' }] }
  const doubt = (instrument?.resolutionMm ?? 0) / 2
  // The steps decide nothing about the plane: it tilts as steeply as the points need.
  const rows = Array.from({ length: count }, (_, row): SurfacePoint[] =>
    readings.slice(row * columns, (row + 1) * columns).map(({ mm }, column) => ({
      x: column * (columnStepMm ?? rowStepMm ?? 1),
      y: row * (rowStepMm ?? columnStepMm ?? 1),
      z: mm,
    })),
  )
  const { peak, valley, ...flat } = peakToValley(rows.flat(), doubt)
  const nameOf = (index: number) =>
    readings[index]?.at ?? `${Math.floor(index / columns) + 1}/${(index % columns) + 1}`
  const worked: Worked[] = [{ what: 'flatness', ...flat, peak: nameOf(peak), valley: nameOf(valley) }]
  if (limits?.spanMm === undefined || limits.mostInSpanMm === undefined) return { worked, lacking: [] }
  if (columnStepMm === undefined && rowStepMm === undefined) return { worked, lacking: [{ what: 'spacing' }] }
  const inSpan = worstWithin(rows, limits.spanMm, doubt)
  if (!inSpan) return { worked, lacking: [{ what: 'span' }] }
  return { worked: [...worked, { what: 'flatness-in-span', spanMm: limits.spanMm, ...inSpan }], lacking: [] }
}
