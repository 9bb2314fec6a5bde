import type { SaidShims } from './read-shims.ts'
import { rangeFor } from './read-wanted.ts'
import type { ClearanceRange, MeasuredValve } from './valve.ts'

/** What a record knows of a valve; lengths in millimetres. */
export interface KnownValve {
  position: string
  clearance: number | null
  fitted: number | null
  wanted: ClearanceRange | null
}

/** What is known of no valve, or not of all: without it there is nothing to work out. */
export interface Lacking {
  lacks: 'clearance' | 'fitted' | 'wanted'
  /** Empty where no valve is known at all. */
  positions: string[]
}

/**
 * The valves to work on: those that were said, each with what was not said taken from the record; or, where none was
 * said, all of which the record knows a clearance. Ranges that were said go before those of the record.
 */
export function wholeValves(
  said: Pick<SaidShims, 'valves' | 'wanted'>,
  known: readonly KnownValve[],
): MeasuredValve[] | Lacking {
  const same = (position: string) =>
    known.find((valve) => valve.position.toLowerCase() === position.toLowerCase())
  const valves = (said.valves.length > 0 ? said.valves : known).map(({ position, clearance, fitted }) => ({
    position: same(position)?.position ?? position,
    clearance,
    fitted: fitted ?? same(position)?.fitted ?? null,
    wanted: rangeFor(position, said.wanted) ?? same(position)?.wanted ?? null,
  }))
  const measured = valves.filter(({ clearance }) => clearance !== null)
  if (measured.length === 0) return { lacks: 'clearance', positions: [] }
  for (const lacks of ['fitted', 'wanted'] as const) {
    const positions = measured.filter((valve) => valve[lacks] === null).map(({ position }) => position)
    if (positions.length > 0) return { lacks, positions }
  }
  return measured.flatMap(({ position, clearance, fitted, wanted }) =>
    clearance === null || fitted === null || wanted === null
      ? []
      : [{ position, clearance, fitted, wanted: { least: wanted.least, most: wanted.most } }],
  )
}
