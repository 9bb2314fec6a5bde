import type { Instrument } from './measurement.ts'

/** A value that was read or worked out, and between which two the true one lies; mm. */
export interface Bounded {
  mm: number
  lowMm: number
  highMm: number
}

/**
 * What a reading says about the true value. An instrument that shows steps of r is off by up to half of r either
 * way. Of a feeler the true gap lies between the leaf that enters and the next one, which does not. Without an
 * instrument the reading is taken as it is.
 */
export function boundsOf(mm: number, instrument: Instrument | undefined): Bounded {
  const step = instrument?.resolutionMm ?? 0
  if (instrument?.kind === 'feeler') return { mm, lowMm: mm, highMm: exact(mm + step) }
  return { mm, lowMm: exact(mm - step / 2), highMm: exact(mm + step / 2) }
}

/** The difference of two readings: what each may be off adds up. */
export function difference(larger: Bounded, smaller: Bounded): Bounded {
  return {
    mm: exact(larger.mm - smaller.mm),
    lowMm: exact(larger.lowMm - smaller.highMm),
    highMm: exact(larger.highMm - smaller.lowMm),
  }
}

/** From the smallest reading to the largest: no less than nothing, and what both may be off adds up. */
export function spread(readings: readonly Bounded[]): Bounded & { from: [number, number] } {
  const byValue = [...readings].sort((a, b) => a.mm - b.mm)
  const [smallest, largest] = [byValue[0], byValue.at(-1)]
  if (!smallest || !largest) throw new RangeError('a spread needs a reading')
  const { mm, lowMm, highMm } = difference(largest, smallest)
  return { mm, lowMm: Math.max(0, lowMm), highMm, from: [largest.mm, smallest.mm] }
}

/** The one with the largest value; the first of several. */
export function largestOf<Each extends Bounded>(all: readonly Each[]): Each | undefined {
  return all.reduce<Each | undefined>((best, each) => (best && best.mm >= each.mm ? best : each), undefined)
}

/** A length without the noise of binary arithmetic, to a millionth of a micrometre. */
export function exact(mm: number): number {
  return Math.round(mm * 1e9) / 1e9 + 0
}
