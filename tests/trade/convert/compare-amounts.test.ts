import { describe, expect, test } from 'vitest'
import { type Comparison, compareAmounts } from '../../../src/trade/convert/compare-amounts.ts'
import { readAmount } from '../../../src/trade/convert/read-amount.ts'

function compared(one: string, other: string): Comparison {
  const [a, b] = [one, other].map((text) => readAmount(text, { units: 'metric' }))
  if (!a?.understood || !b?.understood) throw new Error(`${one} or ${other}`)
  return compareAmounts(a.value, b.value)
}

describe('pairs as manuals print them', () => {
  test.each([
    ['TM 10-3930-669-20, appendix E', '29.5 lbf·ft', '40 N·m'],
    ['TM 9-2815-254-24', '61.5 lbf·ft', '83.3 N·m'],
    ['TM 5-3805-258-24-2', '40 N·m', '30 lbf·ft'],
    ['TM 5-3805-258-24-2, its tolerance', '4 N·m', '3 lbf·ft'],
    ['a printed triple', '36 N·m', '367 kgf·cm'],
    ['a printed triple', '36 N·m', '27 lbf·ft'],
    ['the misprints below, corrected', '0.10 mm', '0.004 in'],
    ['imperial gallon, exact since 1985', '1 imp gal', '4.54609 l'],
    ['exact', '1/2 in', '12.7 mm'],
    ['TM 5-6115-400-12', '0 °F', '-17.8 °C'],
    ['TM 5-6115-400-12', '-65 °F', '-53.9 °C'],
  ])('%s: %s and %s agree', (_, one, other) => {
    expect(compared(one, other).agrees).toBe(true)
    expect(compared(other, one).agrees).toBe(true)
  })

  test.each([
    ['TM 5-3820-256-24-5', '0.01 mm', '0.004 in', 0.1],
    ['a service sheet', '1.0 mm', '0.004 in', 10],
    // 4.545 is a rounding of 4.54609 that went wrong.
    ['FM 55-30, appendix I', '1 imp gal', '4.545 l', undefined],
    ['the other quart', '9 US qt', '10.229 l', undefined],
    ['more coarsely rounded than it is written', '120 N·m', '90 lbf·ft', undefined],
    ['the foot for the inch', '22 N·m', '16.2 lbf·in', undefined],
  ])('%s: %s and %s do not', (_, one, other, slip) => {
    const comparison = compared(one, other)
    expect(comparison.agrees).toBe(false)
    expect(comparison.decimalSlip).toBe(slip)
    expect(compared(other, one).agrees).toBe(false)
  })

  test('how far apart they are, and what it would be', () => {
    const { converted, apart } = compared('120 N·m', '90 lbf·ft')
    expect(converted).toBeCloseTo(88.507, 3)
    expect(apart).toBeCloseTo(0.0169, 4)
    expect(compared('0 mm', '0 in')).toMatchObject({ agrees: true, apart: 0 })
  })
})
