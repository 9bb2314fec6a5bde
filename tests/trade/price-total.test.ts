import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Price, priceText, readPrice } from '../../src/trade/price.ts'
import { priceOfAll, totalsByCurrency } from '../../src/trade/price-total.ts'

function read(typed: string): Price {
  const reading = readPrice(typed)
  if (!reading.understood) throw new Error(`${typed} is no price`)
  return reading.value
}

describe('sums of prices', () => {
  test('each currency has its own sum, and what has none has one too', () => {
    const prices = ['3,20 EUR', '$4.50', '4 €', '1.15', '4.50 USD', '0.10', '1200 JPY'].map(read)
    expect(totalsByCurrency(prices).map(priceText)).toEqual([
      '7.20 EUR in all',
      '$4.50 in all',
      '1.25 in all',
      '4.50 USD in all',
      '1200 JPY in all',
    ])
  })

  test('nothing has no sum', () => {
    expect(totalsByCurrency([])).toEqual([])
  })

  test('0.10 and 0.20 are 0.30, which they are not as binary fractions', () => {
    expect(0.1 + 0.2).not.toBe(0.3)
    expect(totalsByCurrency([read('0.10'), read('0.20')]).map(priceText)).toEqual(['0.30 in all'])
  })

  test('ten at 3.33 each are 33.30', () => {
    expect(priceText(priceOfAll(read('3.33 EUR each'), 10))).toBe('33.30 EUR in all')
  })

  test('the largest price for the most pieces is still exact, and what is not is refused', () => {
    const largest = read('99999999.999 KWD')
    expect(priceOfAll(largest, 9999).minor.toString()).toBe((99_999_999_999n * 9999n).toString())
    expect(() => priceOfAll(largest, 999_999)).toThrow('more than can be kept exactly')
  })

  test('sums are those of whole numbers without limit, in whatever order', () => {
    const prices = fc.array(
      fc.record<Price>({
        minor: fc.integer({ min: 0, max: 9_999_999_999 }),
        digits: fc.constant(2),
        currency: fc.constantFrom('EUR', '$', null),
        of: fc.constant(null),
      }),
      { maxLength: 50 },
    )
    fc.assert(
      fc.property(prices, (some) => {
        const totals = totalsByCurrency(some)
        for (const { currency, minor } of totals) {
          const own = some.filter((price) => price.currency === currency)
          expect(BigInt(minor)).toBe(own.reduce((sum, price) => sum + BigInt(price.minor), 0n))
        }
        const sorted = (list: readonly Price[]) => [...list].sort((a, b) => a.minor - b.minor)
        expect(sorted(totalsByCurrency(some.toReversed()))).toEqual(expect.arrayContaining(sorted(totals)))
        expect(totals).toHaveLength(new Set(some.map(({ currency }) => currency)).size)
      }),
      { seed: 20261130, numRuns: 500 },
    )
  })
})
