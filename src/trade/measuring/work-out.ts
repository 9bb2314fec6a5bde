import { peakToValley, type SurfacePoint } from './best-plane.ts'
import { type Bounded, boundsOf, difference, largestOf, spread } from './bounds.ts'
import type { Lacking, ResultKind, Worked } from './judged.ts'
import type { Measurement, ReadingRole, TakenReading } from './measurement.ts'
import { worstWithin } from './span.ts'

export interface WorkedOut {
  worked: Worked[]
  lacking: Lacking[]
}

/** What the readings come to, whatever the limits say, and what is lacking for it. */
export function workOut(measurement: Measurement): WorkedOut {
  const { kind } = measurement
  switch (kind) {
    case 'flatness':
      return underStraightEdge(measurement)
    case 'flatness-grid':
      return overGrid(measurement)
    case 'size':
      return sizes(measurement)
    case 'clearance':
      return paired(measurement, 'bore', 'journal')
    case 'stretch':
      return paired(measurement, 'after', 'before')
    case 'out-of-round':
      return byPlace(measurement, (readings) => roundness(measurement, 'out-of-round', readings))
    case 'taper':
      return byPlace(measurement, (readings) => roundness(measurement, 'taper', readings))
    case 'run-out':
      return byPlace(measurement, (readings) => [widest(measurement, 'run-out', readings)])
    case 'length':
    case 'valve-clearance':
      return { worked: each(measurement, kind), lacking: [] }
    default:
      return kind satisfies never
  }
}

/** The largest gap; and, where the limit has a part for a span, the largest known to lie within such a span. */
function underStraightEdge(measurement: Measurement): WorkedOut {
  const gaps = each(measurement, 'flatness')
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

function overGrid(measurement: Measurement): WorkedOut {
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

/** Each size; and what several of them say about the roundness of what was measured. */
function sizes(measurement: Measurement): WorkedOut {
  const { worked } = byPlace(measurement, (readings) => [
    ...['out-of-round' as const, 'taper' as const].flatMap((what) =>
      roundness(measurement, what, readings).filter((each) => 'mm' in each && each.from !== undefined),
    ),
  ])
  return { worked: [...each(measurement, 'size'), ...worked], lacking: [] }
}

/**
 * Out-of-round: the largest difference between two axes at one height. Taper: the largest between two heights along
 * one axis. A single reading is the amount itself.
 */
function roundness(
  measurement: Measurement,
  what: 'out-of-round' | 'taper',
  readings: readonly TakenReading[],
): (Worked | Lacking)[] {
  const [first] = readings
  if (readings.length === 1 && first) return [widest(measurement, what, readings)]
  const groups = grouped(readings, (reading) => (what === 'taper' ? reading.axis : reading.height))
  const differences = groups
    .filter((group) => group.length > 1)
    .map((group) => widest(measurement, what, group))
  const largest = largestOf(differences)
  return [largest ?? { what: what === 'taper' ? 'second-height' : 'second-axis', at: first?.at }]
}

/** From the smallest to the largest of several readings; a single one is that amount itself. */
function widest(measurement: Measurement, what: ResultKind, readings: readonly TakenReading[]): Worked {
  const bounded = readings.map(({ mm }) => boundsOf(mm, measurement.instrument))
  const [first, ...more] = readings
  const [only] = bounded
  const amount = more.length === 0 && only ? only : spread(bounded)
  return {
    what,
    at: first?.at,
    ...(what === 'out-of-round' && { height: first?.height }),
    ...(what === 'taper' && { axis: first?.axis }),
    ...amount,
  }
}

/** Differences of the readings that belong together, place by place; a reading that has no role is one itself. */
function paired(measurement: Measurement, larger: ReadingRole, smaller: ReadingRole): WorkedOut {
  const what = measurement.kind === 'stretch' ? 'stretch' : 'clearance'
  const bounded = ({ mm }: TakenReading): Bounded => boundsOf(mm, measurement.instrument)
  return byPlace(measurement, (readings) => {
    const [at] = readings.map((reading) => reading.at)
    const minuends = readings.filter(({ role }) => role === larger)
    const subtrahends = readings.filter(({ role }) => role === smaller)
    const direct = readings.filter(({ role }) => role === undefined)
    const pairs = Math.max(minuends.length, subtrahends.length)
    return [
      ...direct.map((reading): Worked => ({ what, at, ...bounded(reading) })),
      ...Array.from({ length: pairs }, (_, i): Worked | Lacking => {
        const [minuend, subtrahend] = [minuends[i], subtrahends[i]]
        if (!minuend || !subtrahend) return { what: (minuend ? smaller : larger) as Lacking['what'], at }
        return {
          what,
          at,
          ...difference(bounded(minuend), bounded(subtrahend)),
          from: [minuend.mm, subtrahend.mm],
        }
      }),
    ]
  })
}

function each({ readings, instrument }: Measurement, what: ResultKind): Worked[] {
  return readings.map(({ mm, at, height, axis, spanMm }) => ({
    what,
    at,
    height,
    axis,
    spanMm,
    ...boundsOf(mm, instrument),
  }))
}

function byPlace(
  { readings }: Measurement,
  come: (readings: readonly TakenReading[]) => (Worked | Lacking)[],
): WorkedOut {
  const all = grouped(readings, ({ at }) => at).flatMap(come)
  return {
    worked: all.filter((one): one is Worked => 'mm' in one),
    lacking: all.filter((one): one is Lacking => !('mm' in one)),
  }
}

/** In the order in which each name comes first. */
function grouped(
  readings: readonly TakenReading[],
  name: (reading: TakenReading) => string | undefined,
): TakenReading[][] {
  const groups = new Map<string | undefined, TakenReading[]>()
  for (const reading of readings) groups.set(name(reading), [...(groups.get(name(reading)) ?? []), reading])
  return [...groups.values()]
}
