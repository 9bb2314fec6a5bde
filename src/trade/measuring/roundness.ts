import { boundsOf, largestOf, spread } from './bounds.ts'
import type { Lacking, ResultKind, Worked } from './judged.ts'
import type { Measurement, TakenReading } from './measurement.ts'
import { grouped } from './places.ts'

/**
 * Out-of-round: the largest difference between two axes at one height. Taper: the largest between two heights along
 * one axis. A single reading is the amount itself.
 */
export function roundness(
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
export function widest(
  measurement: Measurement,
  what: ResultKind,
  readings: readonly TakenReading[],
): Worked {
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
