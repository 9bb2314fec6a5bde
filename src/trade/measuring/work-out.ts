import { type Bounded, boundsOf, difference } from './bounds.ts'
import type { Lacking, Worked } from './judged.ts'
import type { Measurement, ReadingRole, TakenReading } from './measurement.ts'
import { byPlace, eachReading, type WorkedOut } from './places.ts'
import { roundness, widest } from './roundness.ts'
import { overGrid, underStraightEdge } from './surface.ts'

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
      return { worked: eachReading(measurement, kind), lacking: [] }
    default:
      return kind satisfies never
  }
}

/** Each size; and what several of them say about the roundness of what was measured. */
function sizes(measurement: Measurement): WorkedOut {
  const { worked } = byPlace(measurement, (readings) => [
    ...['out-of-round' as const, 'taper' as const].flatMap((what) =>
      roundness(measurement, what, readings).filter((each) => 'mm' in each && each.from !== undefined),
    ),
  ])
  return { worked: [...eachReading(measurement, 'size'), ...worked], lacking: [] }
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
