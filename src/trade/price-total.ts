import type { Price } from './price.ts'

/** What a number of pieces cost at a price for each: exact, and for all of them. */
export function priceOfAll(each: Price, count: number): Price {
  return { ...each, minor: exact(each.minor * count), of: 'all' }
}

/**
 * The sum of prices for each currency, in the order in which they come; those without a currency are a sum of their own.
 * @throws RangeError where a sum is more than can be kept exactly, 2^53 - 1 of the smallest unit
 */
export function totalsByCurrency(prices: readonly Price[]): Price[] {
  const totals = new Map<string | null, Price>()
  for (const { minor, digits, currency } of prices) {
    const before = totals.get(currency)?.minor ?? 0
    totals.set(currency, { minor: exact(before + minor), digits, currency, of: 'all' })
  }
  return [...totals.values()]
}

function exact(minor: number): number {
  if (!Number.isSafeInteger(minor)) throw new RangeError('the sum is more than can be kept exactly')
  return minor
}
