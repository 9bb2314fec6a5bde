/** The pitches that a standard gives a metric size. */
export interface MetricSeries {
  diameterMm: number
  /** Absent for sizes that exist in fine pitches only. */
  coarseMm?: number
  fineMm: readonly number[]
}

/** The threads per inch that a standard gives an inch size. */
export interface InchSeries {
  /** As the trade writes it: `#10`, `3/8`, `1-1/4`. */
  size: string
  diameterInches: number
  coarse?: number
  fine?: number
}

/**
 * ISO 261:1998, table 2: nominal diameters up to 100 mm in all three choices, the coarse pitch (null where there
 * is none), then the fine pitches. A copy of the table was read, not the standard itself.
 */
const iso261: readonly (readonly [number, number | null, ...number[]])[] = [
  [1, 0.25, 0.2],
  [1.1, 0.25, 0.2],
  [1.2, 0.25, 0.2],
  [1.4, 0.3, 0.2],
  [1.6, 0.35, 0.2],
  [1.8, 0.35, 0.2],
  [2, 0.4, 0.25],
  [2.2, 0.45, 0.25],
  [2.5, 0.45, 0.35],
  [3, 0.5, 0.35],
  [3.5, 0.6, 0.35],
  [4, 0.7, 0.5],
  [4.5, 0.75, 0.5],
  [5, 0.8, 0.5],
  [5.5, null, 0.5],
  [6, 1, 0.75],
  [7, 1, 0.75],
  [8, 1.25, 1, 0.75],
  [9, 1.25, 1, 0.75],
  [10, 1.5, 1.25, 1, 0.75],
  [11, 1.5, 1, 0.75],
  [12, 1.75, 1.5, 1.25, 1],
  [14, 2, 1.5, 1.25, 1],
  [15, null, 1.5, 1],
  [16, 2, 1.5, 1],
  [17, null, 1.5, 1],
  [18, 2.5, 2, 1.5, 1],
  [20, 2.5, 2, 1.5, 1],
  [22, 2.5, 2, 1.5, 1],
  [24, 3, 2, 1.5, 1],
  [25, null, 2, 1.5, 1],
  [26, null, 1.5],
  [27, 3, 2, 1.5, 1],
  [28, null, 2, 1.5, 1],
  [30, 3.5, 3, 2, 1.5],
  [32, null, 2, 1.5],
  [33, 3.5, 3, 2, 1.5],
  [35, null, 1.5],
  [36, 4, 3, 2, 1.5],
  [38, null, 1.5],
  [39, 4, 3, 2, 1.5],
  [40, null, 3, 2, 1.5],
  [42, 4.5, 4, 3, 2, 1.5],
  [45, 4.5, 4, 3, 2, 1.5],
  [48, 5, 4, 3, 2, 1.5],
  [50, null, 3, 2, 1.5],
  [52, 5, 4, 3, 2, 1.5],
  [55, null, 4, 3, 2, 1.5],
  [56, 5.5, 4, 3, 2, 1.5],
  [58, null, 4, 3, 2, 1.5],
  [60, 5.5, 4, 3, 2, 1.5],
  [62, null, 4, 3, 2, 1.5],
  [64, 6, 4, 3, 2, 1.5],
  [65, null, 4, 3, 2, 1.5],
  [68, 6, 4, 3, 2, 1.5],
  [70, null, 6, 4, 3, 2, 1.5],
  [72, null, 6, 4, 3, 2, 1.5],
  [75, null, 4, 3, 2, 1.5],
  [76, null, 6, 4, 3, 2, 1.5],
  [78, null, 2],
  [80, null, 6, 4, 3, 2, 1.5],
  [82, null, 2],
  [85, null, 6, 4, 3, 2],
  [90, null, 6, 4, 3, 2],
  [95, null, 6, 4, 3, 2],
  [100, null, 6, 4, 3, 2],
]

/**
 * ASME B1.1, threads per inch of UNC and UNF (null where the series has none). Sizes #10 and 1/4 to 1 were read in
 * reprints of the table; the other numbered sizes and those over 1 inch are from memory.
 */
const asmeB1: readonly (readonly [string, number, number | null, number | null])[] = [
  ['#0', 0.06, null, 80],
  ['#1', 0.073, 64, 72],
  ['#2', 0.086, 56, 64],
  ['#3', 0.099, 48, 56],
  ['#4', 0.112, 40, 48],
  ['#5', 0.125, 40, 44],
  ['#6', 0.138, 32, 40],
  ['#8', 0.164, 32, 36],
  ['#10', 0.19, 24, 32],
  ['#12', 0.216, 24, 28],
  ['1/4', 1 / 4, 20, 28],
  ['5/16', 5 / 16, 18, 24],
  ['3/8', 3 / 8, 16, 24],
  ['7/16', 7 / 16, 14, 20],
  ['1/2', 1 / 2, 13, 20],
  ['9/16', 9 / 16, 12, 18],
  ['5/8', 5 / 8, 11, 18],
  ['3/4', 3 / 4, 10, 16],
  ['7/8', 7 / 8, 9, 14],
  ['1', 1, 8, 12],
  ['1-1/8', 1.125, 7, 12],
  ['1-1/4', 1.25, 7, 12],
  ['1-3/8', 1.375, 6, 12],
  ['1-1/2', 1.5, 6, 12],
  ['1-3/4', 1.75, 5, null],
  ['2', 2, 4.5, null],
  ['2-1/4', 2.25, 4.5, null],
  ['2-1/2', 2.5, 4, null],
  ['2-3/4', 2.75, 4, null],
  ['3', 3, 4, null],
]

/** ASME B1.20.1: nominal pipe size, outside diameter of the pipe in inches, threads per inch. */
const asmeB120: readonly (readonly [string, number, number])[] = [
  ['1/16', 0.3125, 27],
  ['1/8', 0.405, 27],
  ['1/4', 0.54, 18],
  ['3/8', 0.675, 18],
  ['1/2', 0.84, 14],
  ['3/4', 1.05, 14],
  ['1', 1.315, 11.5],
  ['1-1/4', 1.66, 11.5],
  ['1-1/2', 1.9, 11.5],
  ['2', 2.375, 11.5],
]

/** Metric sizes and pitches of ISO 261, by nominal diameter in mm. */
export const metricSeries: ReadonlyMap<number, MetricSeries> = new Map(
  iso261.map(([diameterMm, coarse, ...fineMm]) => [
    diameterMm,
    coarse === null ? { diameterMm, fineMm } : { diameterMm, coarseMm: coarse, fineMm },
  ]),
)

/** Unified sizes and threads per inch of ASME B1.1, by size. */
export const unifiedSeries: ReadonlyMap<string, InchSeries> = new Map(
  asmeB1.map(([size, diameterInches, coarse, fine]) => [
    size,
    { size, diameterInches, ...(coarse !== null && { coarse }), ...(fine !== null && { fine }) },
  ]),
)

/** Taper pipe threads of ASME B1.20.1, by nominal size; each has one pitch. */
export const taperPipeSeries: ReadonlyMap<string, InchSeries> = new Map(
  asmeB120.map(([size, diameterInches, coarse]) => [size, { size, diameterInches, coarse }]),
)

/** All pitches in mm that ISO 261 gives a nominal diameter, the coarse one first; none for an unknown size. */
export function pitchesOf(diameterMm: number): number[] {
  const series = metricSeries.get(diameterMm)
  if (!series) return []
  return series.coarseMm === undefined ? [...series.fineMm] : [series.coarseMm, ...series.fineMm]
}
