import type { Bitmap } from './bitmap.ts'

/** How labels are printed on a roll. */
export interface RollJob {
  copies?: number
  /** Dots across that the printer can print. */
  widest?: number
}

/**
 * Makes sure that a roll printer can print the labels.
 * @throws RangeError when a label is wider than the printer prints, or the copies are no count.
 */
export function checkRollJob(bitmaps: readonly Bitmap[], copies: number, widest: number): void {
  if (!Number.isInteger(copies) || copies < 1) throw new RangeError(`No number of copies: ${copies}`)
  for (const { width } of bitmaps) {
    if (width > widest) throw new RangeError(`${width} dots across, at most ${widest}`)
  }
}
