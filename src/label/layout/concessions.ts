import type { ContainerLabel } from '../label-content.ts'
import { armEm, handEm } from './type-sizes.ts'

/** What may shrink and what may be cut, so that a label holds its text. */
export interface Concession {
  /** Of heading and digits, as part of their largest size; with 0 they are as small as may be. */
  scale: number
  /** The smallest em of the text, in millimetres. */
  smallest: number
  /** Whether texts may be shortened. */
  cuts: boolean
  /** At most so many lines for each text. */
  whatLines: number
  whereLines: number
  warningLines: number
  /** So many lots are named, of the others their number. */
  lots: number
  /** Job and date at the foot. */
  footer: boolean
  /** Names are cut at their ends, sizes and all: half a name says more than none. */
  ends: boolean
}

/**
 * The concessions in order, each made only when those before were not enough: first all shrinks; then the job goes,
 * whose number is in the code; then names are cut, then lots are left out from the end, then where it goes back, and the
 * words of the cautions; then the one name that is left ends where the line does; at last only the number of the lots is left.
 */
export function concessions({ what }: ContainerLabel): Concession[] {
  const none = {
    cuts: false,
    whatLines: 99,
    whereLines: 99,
    warningLines: 99,
    lots: what.length,
    footer: true,
    ends: false,
  }
  const cut = { ...none, scale: 0, smallest: handEm, cuts: true }
  const tight = { ...cut, whatLines: 1, whereLines: 1, warningLines: 1 }
  const one = { ...tight, lots: Math.min(1, what.length), footer: false }
  const fewer = Array.from({ length: Math.min(what.length, mostLots) }, (_, n) => what.length - 1 - n)
  const lots = fewer.filter((count) => count > 0 && count < mostLots)
  return [
    { ...none, scale: 1, smallest: armEm },
    { ...none, scale: 0.75, smallest: 2.8 },
    { ...none, scale: 0, smallest: handEm },
    { ...none, scale: 0, smallest: handEm, footer: false },
    { ...cut, whatLines: 3, whereLines: 2, warningLines: 3 },
    { ...cut, whatLines: 2, whereLines: 1, warningLines: 2 },
    tight,
    ...lots.map((count) => ({ ...tight, lots: count })),
    one,
    { ...one, whereLines: 0 },
    { ...one, whereLines: 0, warningLines: 0 },
    { ...one, whatLines: 2, whereLines: 0, warningLines: 0, ends: true },
    { ...one, whereLines: 0, warningLines: 0, ends: true },
    { ...one, lots: 0, whereLines: 0, warningLines: 0 },
  ]
}

const mostLots = 60
