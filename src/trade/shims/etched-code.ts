import { notUnderstood, type Reading, understood } from '../reading.ts'
import type { TypedLength } from './read-length.ts'
import { sizeFault } from './read-sizes.ts'
import type { ShimFault } from './shim-fault.ts'
import { fromTicks, ticks } from './valve.ts'

// A shim of another engine would lie farther off. Common practice.
const mostApart = 1.5

/** What is known of the sizes around: those written in full, and those for sale, in millimetres. */
export interface KnownSizes {
  written: readonly number[]
  forSale: readonly number[]
}

/**
 * The size of a shim in millimetres. Digits as they are etched (`245`, `2475`) are hundredths or thousandths of a
 * millimetre where the sizes around make that certain: some is written in full or for sale, and lies near. Of `247`,
 * the last digit may be rounded or cut off (2.475), so that only a list of what is for sale can tell.
 */
export function sizeOf(length: TypedLength, known: KnownSizes): Reading<number, ShimFault> {
  if (!length.isBare || !/^[1-9]\d{2,3}$/.test(length.typed)) {
    return sizeFault(length) ?? understood(length.mm)
  }
  const candidates = meanings(length.typed, known.forSale)
  const around = [...known.written, ...known.forSale]
  const near = candidates.filter((mm) => around.some((other) => Math.abs(other - mm) <= mostApart))
  const [size] = near
  if (size === undefined || near.length > 1) {
    return notUnderstood('code', length.typed, sizeText(size ?? fromCode(length.typed)))
  }
  return understood(size)
}

/** Whether a length is digits as they are etched, and no size in full. */
export function isCode({ isBare, typed }: TypedLength): boolean {
  return isBare && /^[1-9]\d{2,3}$/.test(typed)
}

function meanings(digits: string, forSale: readonly number[]): number[] {
  const size = fromCode(digits)
  if (digits.length > 3) return [size]
  const listed = [size, fromTicks(ticks(size) + 500), fromTicks(ticks(size) - 500)].filter((mm) =>
    forSale.some((other) => ticks(other) === ticks(mm)),
  )
  if (listed.length > 0) return listed.includes(size) ? [size] : listed
  return /[05]$/.test(digits) ? [size] : [size, fromTicks(ticks(size) + 500)]
}

function fromCode(digits: string): number {
  return Number(digits) / 10 ** (digits.length - 1)
}

function sizeText(mm: number): string {
  return String(mm).length > 4 ? String(mm) : mm.toFixed(2)
}
