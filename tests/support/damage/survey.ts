import { seededCodes } from '../../label/known-codes.ts'
import { type Damage, mishapOf } from './damages.ts'
import { labelSize, type Print, printedLabel } from './printed-label.ts'
import { readingAfter } from './readings.ts'

/** What came of so many damaged labels. */
export interface Tally {
  labels: number
  zxing: number
  /** 0 when it was not asked. */
  jsqr: number
  either: number
  wrong: number
  strays: number
}

/**
 * Prints `labels` different codes in each of the ways, lets the same mishaps befall each way, and counts what is read.
 * The first label is the one numbered `from`; a number stands for one code and one mishap for ever.
 */
export async function survey(
  prints: readonly Print[],
  damage: Damage,
  { from = 0, labels, jsqr }: { from?: number; labels: number; jsqr: boolean },
): Promise<Tally[]> {
  const tallies = prints.map(() => ({ labels, zxing: 0, jsqr: 0, either: 0, wrong: 0, strays: 0 }))
  const codes = seededCodes(from + labels).slice(from)
  for (const [at, code] of codes.entries()) {
    const mishap = mishapOf(damage, labelSize, from + at)
    for (const [way, print] of prints.entries()) {
      const reading = await readingAfter(mishap, code, printedLabel(code, print), { jsqr })
      const tally = tallies[way] as Tally
      if (reading.zxing) tally.zxing++
      if (reading.jsqr === true) tally.jsqr++
      if (reading.zxing || reading.jsqr === true) tally.either++
      tally.wrong += reading.wrong.length
      tally.strays += reading.strays.length
    }
  }
  return tallies
}

/** The sum of tallies over several damages. */
export function together(tallies: readonly Tally[]): Tally {
  const sum = (what: keyof Tally) => tallies.reduce((total, each) => total + each[what], 0)
  return {
    labels: sum('labels'),
    zxing: sum('zxing'),
    jsqr: sum('jsqr'),
    either: sum('either'),
    wrong: sum('wrong'),
    strays: sum('strays'),
  }
}
