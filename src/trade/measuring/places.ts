import { boundsOf } from './bounds.ts'
import type { Lacking, ResultKind, Worked } from './judged.ts'
import type { Measurement, TakenReading } from './measurement.ts'

/** What readings come to, and what is lacking for it. */
export interface WorkedOut {
  worked: Worked[]
  lacking: Lacking[]
}

/** Each reading as a result of its own. */
export function eachReading({ readings, instrument }: Measurement, what: ResultKind): Worked[] {
  return readings.map(({ mm, at, height, axis, spanMm }) => ({
    what,
    at,
    height,
    axis,
    spanMm,
    ...boundsOf(mm, instrument),
  }))
}

/** What the readings of each place come to. */
export function byPlace(
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
export function grouped(
  readings: readonly TakenReading[],
  name: (reading: TakenReading) => string | undefined,
): TakenReading[][] {
  const groups = new Map<string | undefined, TakenReading[]>()
  for (const reading of readings) groups.set(name(reading), [...(groups.get(name(reading)) ?? []), reading])
  return [...groups.values()]
}
