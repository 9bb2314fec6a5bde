import { type MeasuredValve, ticks } from './valve.ts'

/** A shim of a size that is not for sale: worn, ground or read wrongly. To be asked about, not refused. */
export interface OddSize {
  /** The valve that it is fitted at, null for the bench. */
  at: string | null
  size: number
  /** The sizes for sale next to it, ascending: one or two. */
  next: number[]
}

/** The shims on hand that are not in the list of what is for sale; none where there is no list. Sizes in millimetres. */
export function oddSizes(
  valves: readonly MeasuredValve[],
  bench: readonly number[],
  forSale: readonly number[],
): OddSize[] {
  if (forSale.length === 0) return []
  const onHand = [
    ...valves.map(({ position, fitted }) => ({ at: position, size: fitted })),
    ...bench.map((size) => ({ at: null, size })),
  ]
  return onHand
    .filter(({ size }) => !forSale.some((other) => ticks(other) === ticks(size)))
    .map((odd) => ({
      ...odd,
      next: [forSale.findLast((other) => other < odd.size), forSale.find((other) => other > odd.size)].filter(
        (size) => size !== undefined,
      ),
    }))
}
