import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Price, priceText, readPrice } from '../../src/trade/price.ts'

const price = (minor: number, currency: string | null = null, more: Partial<Price> = {}): Price => ({
  minor,
  digits: 2,
  currency,
  of: null,
  ...more,
})

describe('prices as they are typed', () => {
  test.each([
    ['3.20', price(320)],
    ['3,20', price(320)],
    ['3', price(300)],
    ['3.2', price(320)],
    ['.50', price(50)],
    ['0', price(0)],
    ['3,20 EUR', price(320, 'EUR')],
    ['3.20eur', price(320, 'EUR')],
    ['EUR 3.20', price(320, 'EUR')],
    ['3,20 €', price(320, 'EUR')],
    ['€3.20', price(320, 'EUR')],
    ['3.20 euros', price(320, 'EUR')],
    ['5,- EUR', price(500, 'EUR')],
    ['Fr. 5.-', price(500, 'Fr')],
    ['$4.50', price(450, '$')],
    ['$ 4.50', price(450, '$')],
    ['4.50 $', price(450, '$')],
    ['US$4.50', price(450, 'US$')],
    ['$4.50 USD', price(450, 'USD')],
    ['$12 MXN', price(1200, 'MXN')],
    ['¥1200 JPY', price(1200, 'JPY', { digits: 0 })],
    ['£0.99', price(99, '£')],
    ['129 kr', price(12_900, 'kr')],
    ['129 kr.', price(12_900, 'kr')],
    ['19,90 zł', price(1990, 'zł')],
    ['4.50 USD each', price(450, 'USD', { of: 'each' })],
    ['4.50 each', price(450, null, { of: 'each' })],
    ['$4.50 ea.', price(450, '$', { of: 'each' })],
    ['4.50 EUR apiece', price(450, 'EUR', { of: 'each' })],
    ['4.50 EUR per pc', price(450, 'EUR', { of: 'each' })],
    ['4.50 EUR/pc', price(450, 'EUR', { of: 'each' })],
    ['27 USD in all', price(2700, 'USD', { of: 'all' })],
    ['27 USD total', price(2700, 'USD', { of: 'all' })],
    ['27, in total', price(2700, null, { of: 'all' })],
    ['1,234.50', price(123_450)],
    ['1.234,50 EUR', price(123_450, 'EUR')],
    ['1 234,50 EUR', price(123_450, 'EUR')],
    ["1'234.50 CHF", price(123_450, 'CHF')],
    ['1,234,567', price(123_456_700)],
    ['12345.67', price(1_234_567)],
    ['99999999.99', price(9_999_999_999)],
    // Minor units: ISO 4217, table A.1: JPY 0, KWD 3
    ['1200 JPY', price(1200, 'JPY', { digits: 0 })],
    ['1,200 JPY', price(1200, 'JPY', { digits: 0 })],
    ['1.250 KWD', price(1250, 'KWD', { digits: 3 })],
    ['1.5 KWD', price(1500, 'KWD', { digits: 3 })],
  ])('%j', (typed, value) => {
    expect(readPrice(typed)).toEqual({ understood: true, value })
  })

  test('no price passes through a binary fraction: 8.20 and 1.15 times 100 are no whole numbers there', () => {
    expect([8.2 * 100, 1.15 * 100]).not.toEqual([820, 115])
    expect(readPrice('8.20')).toMatchObject({ value: { minor: 820 } })
    expect(readPrice('1.15')).toMatchObject({ value: { minor: 115 } })
  })
})

describe('decimals or thousands', () => {
  test.each([
    ['1.250', '1250', '1.25'],
    ['1,200 EUR', '1200 EUR', '1.20 EUR'],
    ['$3.205 each', '$3205 each', '$3.21 each'],
  ])('%j: %j or %j', (typed, one, other) => {
    expect(readPrice(typed)).toMatchObject({ code: 'two-ways', nearest: one, ways: [one, other] })
    for (const way of [one, other]) expect(readPrice(way).understood).toBe(true)
  })
})

describe('what is no price', () => {
  test.each([
    ['', 'empty', '', '3.20'],
    ['free', 'figures', 'free', '3.20'],
    ['EUR', 'figures', 'EUR', '3.20'],
    ['1.2.3 EUR', 'figures', '1.2.3', '3.20 EUR'],
    ['1.23,45.6', 'figures', '1.23,45.6', '3.20'],
    ['-5 EUR', 'negative', '-5', '5 EUR'],
    ['0.125 EUR each', 'decimals', '0.125', '0.13 EUR each'],
    ['0.9999', 'decimals', '0.9999', '1.00'],
    ['12.50 JPY', 'decimals', '12.50', '13 JPY'],
    ['123456789', 'too-large', '123456789', '99999999'],
    ['99999999.999 EUR', 'too-large', '99999999.999', '99999999 EUR'],
    ['4.50 XYZ', 'currency', 'XYZ', '4.50'],
    ['4.50 pcs', 'currency', 'pcs', '4.50'],
    ['@ 4.50', 'currency', '@', '4.50'],
    ['80 ct', 'currency', 'ct', '0.80'],
    ['5 cents each', 'currency', 'cents', '0.05 each'],
    ['£4.50 USD', 'two-currencies', 'USD', '£4.50'],
    ['$4.50 €', 'two-currencies', '€', '$4.50'],
    ['EUR 4.50 USD', 'two-currencies', 'USD', '4.50 EUR'],
  ])('%j: %s', (typed, code, part, nearest) => {
    expect(readPrice(typed)).toEqual({ understood: false, code, part, nearest })
  })

  test('whatever is typed, the nearest form is understood', () => {
    const words = fc.constantFrom(
      'EUR',
      '$',
      '4',
      '.',
      ',',
      '50',
      '000',
      '-',
      ' ',
      'each',
      'kr.',
      'x',
      'JPY',
      "'",
      'ct',
    )
    const texts = fc.oneof(
      fc.string({ maxLength: 20 }),
      fc.array(words, { maxLength: 8 }).map((some) => some.join('')),
    )
    fc.assert(
      fc.property(texts, (text) => {
        const reading = readPrice(text)
        if (reading.understood) return
        expect(readPrice(reading.nearest).understood).toBe(true)
        if (reading.code === 'two-ways') expect(readPrice(reading.ways[1]).understood).toBe(true)
      }),
      { seed: 20261130, numRuns: 5000 },
    )
  })
})

describe('a price as text', () => {
  test.each([
    [price(320), '3.20'],
    [price(5), '0.05'],
    [price(0, '$'), '$0.00'],
    [price(450, 'USD', { of: 'each' }), '4.50 USD each'],
    [price(450, 'US$', { of: 'all' }), 'US$4.50 in all'],
    [price(12_900, 'kr'), '129.00 kr'],
    [price(1200, 'JPY', { digits: 0 }), '1200 JPY'],
    [price(50, 'KWD', { digits: 3 }), '0.050 KWD'],
  ])('%j is %j', (value, text) => {
    expect(priceText(value)).toBe(text)
  })

  test('it is read as the same price', () => {
    const currencies = fc.constantFrom<[string | null, number]>(
      [null, 2],
      ['EUR', 2],
      ['$', 2],
      ['kr', 2],
      ['JPY', 0],
      ['₩', 0],
      ['BHD', 3],
    )
    const prices = fc
      .record({
        minor: fc.integer({ min: 0, max: 99_999_999 }),
        currency: currencies,
        of: fc.constantFrom('each' as const, 'all' as const, null),
      })
      .map(({ minor, currency: [currency, digits], of }) => ({ minor, digits, currency, of }))
    fc.assert(
      fc.property(prices, (value) => {
        expect(readPrice(priceText(value))).toEqual({ understood: true, value })
      }),
      { seed: 20261130, numRuns: 1000 },
    )
  })
})
