/** What is measured: it decides what the readings come to. */
export const MEASUREMENT_KINDS = [
  /** Gaps under a straight-edge, one for each line: the largest wins. */
  'flatness',
  /** Heights at the points of a grid, row by row: best plane, then from peak to valley. */
  'flatness-grid',
  /** A bore, a journal, a thickness: any plain size. */
  'size',
  /** A gap that was read (feeler, crushed strip), or a bore and the journal in it. */
  'clearance',
  /** The largest difference of two axes at one height. */
  'out-of-round',
  /** The largest difference between heights along one axis. */
  'taper',
  /** A free length. */
  'length',
  /** How much longer a bolt is than before; lengths before and after, or the stretch itself. */
  'stretch',
  /** Total indicator reading; dial readings around one turn, or that total itself. */
  'run-out',
  'valve-clearance',
] as const
export type MeasurementKind = (typeof MEASUREMENT_KINDS)[number]

export const INSTRUMENT_KINDS = [
  'feeler',
  'dial',
  'micrometer',
  'caliper',
  'bore-gauge',
  'plastic-strip',
] as const
export type InstrumentKind = (typeof INSTRUMENT_KINDS)[number]

/** Which of two readings that belong together one is. */
export const READING_ROLES = ['bore', 'journal', 'before', 'after'] as const
export type ReadingRole = (typeof READING_ROLES)[number]

/**
 * Readings as they were taken, with the instrument and the limits that the user took from the machine's manual.
 * Plain data, kept for good; what the readings come to is worked out anew each time (`judge`).
 */
export interface Measurement {
  kind: MeasurementKind
  readings: TakenReading[]
  /** How many readings a row of the grid has; `flatness-grid` only. */
  columns?: number | undefined
  /** From one point of the grid to the next in its row, and from row to row, mm. */
  columnStepMm?: number | undefined
  rowStepMm?: number | undefined
  instrument?: Instrument | undefined
  limits?: MeasuredLimits | undefined
}

/** One reading: in millimetres, and as typed. A dial reads below zero too. */
export interface TakenReading {
  mm: number
  typed: string
  /** The position or line it was taken at: `I1`, `diagonal`. */
  at?: string | undefined
  /** In a bore or on a journal: how far down, and across which axis, in the words of whoever measured. */
  height?: string | undefined
  axis?: string | undefined
  role?: ReadingRole | undefined
  /** The stretch of surface within which the gap was found, mm. */
  spanMm?: number | undefined
}

/** What it was read with. */
export interface Instrument {
  /** The smallest difference that it shows; of feelers the step from leaf to leaf; mm. */
  resolutionMm: number
  typed: string
  kind?: InstrumentKind | undefined
}

/** Limits as the machine's manual gives them, in millimetres. On the limit is within it. */
export interface MeasuredLimits {
  typed: string
  leastMm?: number | undefined
  mostMm?: number | undefined
  /** The second part of a flatness limit: most within any stretch of `spanMm`. */
  mostInSpanMm?: number | undefined
  spanMm?: number | undefined
  /** Beside the limits of a size. */
  outOfRoundMostMm?: number | undefined
  taperMostMm?: number | undefined
  /** Where the limits stand: `manual p. 4-12`. */
  source?: string | undefined
}
