import { describe, expect, test } from 'vitest'
import { currencyNamed, isWrittenInFront, minorDigits } from '../../src/trade/currency.ts'

describe('currencies', () => {
  test.each([
    ['EUR', 'EUR'],
    ['usd', 'USD'],
    ['€', 'EUR'],
    ['Euro', 'EUR'],
    ['$', '$'],
    ['us$', 'US$'],
    ['£', '£'],
    ['Kr.', 'kr'],
    ['KČ', 'Kč'],
    ['XAU', null],
    ['DEM', null],
    ['pcs', null],
    ['each', null],
    ['', null],
  ])('%j is %j', (typed, currency) => {
    expect(currencyNamed(typed)).toBe(currency)
  })

  // ISO 4217, table A.1, column "minor unit"
  test.each([
    ['EUR', 2],
    ['USD', 2],
    ['HUF', 2],
    ['JPY', 0],
    ['KRW', 0],
    ['CLP', 0],
    ['ISK', 0],
    ['XAF', 0],
    ['UGX', 0],
    ['VND', 0],
    ['BHD', 3],
    ['TND', 3],
    ['IQD', 3],
    [null, 2],
    ['$', 2],
  ])('%s has %i digits behind the point', (currency, digits) => {
    expect(minorDigits(currency)).toBe(digits)
  })

  test('no code is misspelled: the engine knows each of them', () => {
    const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'.split('')
    const all = letters.flatMap((one) => letters.flatMap((two) => letters.map((three) => one + two + three)))
    const known = all.filter((code) => currencyNamed(code) === code)
    const engine = new Set(Intl.supportedValuesOf('currency'))
    expect(known.filter((code) => !engine.has(code))).toEqual([])
    expect(known.length).toBeGreaterThan(150)
  })

  test('signs stand in front, codes and letters behind', () => {
    expect(['$', 'US$', '£', 'EUR', 'kr'].map(isWrittenInFront)).toEqual([true, true, true, false, false])
  })
})
