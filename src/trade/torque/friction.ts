import { readDecimal } from '../number.ts'
import { notUnderstood, type Reading, understood } from '../reading.ts'
import type { FrictionRange } from './preload.ts'

/** Who said what the friction is: a person in numbers, a person in words, or nobody. */
export type FrictionBy = 'typed' | 'dry' | 'oiled' | 'assumed'

const least = 0.01
const most = 1

/**
 * Friction in thread and under the head: oiled is class B and dry class C of VDI 2230 part 1, table A5, from memory; where
 * nothing is said the range spans both. Common practice takes them for clean steel threads only.
 */
export const usualFriction: Readonly<Record<Exclude<FrictionBy, 'typed'>, FrictionRange>> = {
  oiled: { least: 0.08, most: 0.16 },
  dry: { least: 0.14, most: 0.24 },
  assumed: { least: 0.08, most: 0.24 },
}

/** Reads a coefficient of friction or a range of them: `0.12`, `0.10..0.16`, `0,10-0,16`. */
export function readFriction(text: string): Reading<FrictionRange, 'friction'> {
  const typed = text.trim()
  const [first = '', second = first, ...more] = typed.split(/ ?(?:\.{2,3}|…|-|–| to ) ?/)
  const from = readDecimal(first)
  const to = readDecimal(second)
  if (from === undefined || to === undefined || more.length > 0) {
    return notUnderstood('friction', typed, '0.10..0.16')
  }
  const range = { least: Math.min(from, to), most: Math.max(from, to) }
  if (range.least < least || range.most > most) return notUnderstood('friction', typed, '0.10..0.16')
  return understood(range)
}
