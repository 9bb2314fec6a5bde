import type { Bounded } from './bounds.ts'
import type { Verdict } from './verdict.ts'

export type ResultKind =
  | 'flatness'
  /** The second part of a flatness limit: within any stretch of `spanMm`. */
  | 'flatness-in-span'
  | 'size'
  | 'clearance'
  | 'out-of-round'
  | 'taper'
  | 'length'
  | 'stretch'
  | 'run-out'
  | 'valve-clearance'

/** What readings come to before they are held against limits; mm. */
export interface Worked extends Bounded {
  what: ResultKind
  /** The position or line that it is of. */
  at?: string | undefined
  height?: string | undefined
  axis?: string | undefined
  /** The two readings it is the difference of, the one that it was taken from first. */
  from?: [number, number] | undefined
  spanMm?: number | undefined
  /** Of a grid: which points stand out most, up and down, as row/column. */
  peak?: string | undefined
  valley?: string | undefined
}

/** A result with the limits it was held against and the verdict; none where there is no limit for it. */
export interface MeasuredResult extends Worked {
  leastMm?: number | undefined
  mostMm?: number | undefined
  verdict: Verdict | null
  /** Of a result too close to call: the limit it is near, and the resolution that would decide, if any would. */
  nearMm?: number | undefined
  decidesMm?: number | undefined
}

/** What a measurement still lacks. `at`: where, if not everywhere. */
export interface Lacking {
  what:
    | 'limits'
    | 'resolution'
    /** Whether gaps larger than the limit for a span lie within such a span. */
    | 'span'
    /** How far apart the points of the grid are. */
    | 'spacing'
    /** Not as many readings as fill the rows of the grid, or fewer than two rows or columns. */
    | 'grid'
    | 'bore'
    | 'journal'
    | 'before'
    | 'after'
    | 'second-axis'
    | 'second-height'
    /** Typed without a unit, all of it is out, and would be in if it was inches. */
    | 'inches'
  at?: string | undefined
}

export interface Judged {
  results: MeasuredResult[]
  /** The worst verdict of all results: out, then too close to call, then in; none where nothing has one. */
  verdict: Verdict | null
  lacking: Lacking[]
}
