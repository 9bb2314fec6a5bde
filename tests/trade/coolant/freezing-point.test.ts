import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { freezingPoint, type Glycol, strengthFor } from '../../../src/trade/coolant/freezing-point.ts'
import { fahrenheit } from '../../../src/trade/coolant/temperature.ts'

const glycols: readonly Glycol[] = ['ethylene', 'propylene']

function celsius(glycol: Glycol, percent: number): number {
  const point = freezingPoint(glycol, percent)
  if (point.code !== 'freezes') throw new Error(`${percent} %: ${point.code}`)
  return point.celsius
}

describe('the freezing point of a mixture', () => {
  // CoolProp, T_FREEZE of INCOMP::AEG and INCOMP::APG, evaluated with that library: volume percent and °C.
  test.each([
    [10, -3.6186, -3.4253],
    [15, -6.1516, -5.249],
    [20, -8.9758, -7.3845],
    [25, -12.1192, -9.9654],
    [30, -15.7004, -13.1052],
    [33.3, -18.3803, -15.5363],
    [35, -19.877, -16.9129],
    [40, -24.7954, -21.5086],
    [45, -30.5444, -27.0341],
    [50, -37.1149, -33.6614],
    [55, -44.3687, -41.5932],
    [60, -52.0201, -51.0566],
  ])('%d percent: %d °C of ethylene and %d °C of propylene glycol', (percent, ethylene, propylene) => {
    expect(celsius('ethylene', percent)).toBeCloseTo(ethylene, 3)
    expect(celsius('propylene', percent)).toBeCloseTo(propylene, 3)
  })

  // Lange's Handbook of Chemistry, 15th edition, table 5.13, propylene glycol. Sources differ by up to 2.5 degrees.
  test.each([
    [10, -2.2],
    [15, -3.9],
    [20, -6.7],
    [25, -8.9],
    [30, -12.8],
    [35, -16.1],
    [40, -20.6],
    [45, -26.7],
    [50, -33.3],
  ])('%d percent of propylene glycol: about %d °C', (percent, printed) => {
    expect(Math.abs(celsius('propylene', percent) - printed)).toBeLessThan(2.5)
  })

  // TM 5-6115-400-12, note 3: one part of ethylene glycol to two parts of water reads 0 °F on the hydrometer.
  test('a third of ethylene glycol: about 0 °F', () => {
    expect(Math.abs(celsius('ethylene', 100 / 3) - -17.78)).toBeLessThan(2.5)
  })

  // TM 5-6115-400-12, note 1: pints of ethylene glycol in a gallon of 8 for the lowest temperature that is expected.
  test.each([
    [3.25, -10],
    [3.5, -20],
    [4, -30],
    [4.25, -40],
  ])('%d pints in a gallon hold to %d °F, with no more than 7 degrees C to spare', (pints, lowest) => {
    const spare = (lowest - fahrenheit(celsius('ethylene', (pints / 8) * 100))) / 1.8
    expect(spare).toBeGreaterThan(-2.5)
    expect(spare).toBeLessThan(7)
  })

  // The same note: the most protection is at 60 % (4.8 pints), -65 °F = -53.9 °C; more raises the freezing point.
  test('the most protection: 60 % of ethylene glycol', () => {
    expect(Math.abs(celsius('ethylene', 60) - -53.9)).toBeLessThan(2.5)
    expect(freezingPoint('ethylene', 61)).toEqual({
      code: 'stronger-than-range',
      bestCelsius: celsius('ethylene', 60),
    })
  })

  // ASTM D3306 wants at 50 % no warmer than -36.4 °C of ethylene and -31.0 °C of propylene glycol; from memory.
  test('50 %, as the standard for coolants wants it', () => {
    expect(Math.abs(celsius('ethylene', 50) - -36.4)).toBeLessThan(2.5)
    expect(Math.abs(celsius('propylene', 50) - -31)).toBeLessThan(2.7)
  })

  test('water', () => {
    expect(freezingPoint('ethylene', 0)).toEqual({ code: 'freezes', celsius: 0 })
  })

  test.each([
    [0.1, 'weaker-than-range'],
    [9.9, 'weaker-than-range'],
    [10, 'freezes'],
    [60, 'freezes'],
    [60.1, 'stronger-than-range'],
    [70, 'stronger-than-range'],
    [70.1, 'too-strong'],
    [100, 'too-strong'],
    [100.1, 'percent'],
    [-1, 'percent'],
    [Number.NaN, 'percent'],
  ])('%d percent: %s', (percent, code) => {
    for (const glycol of glycols) expect(freezingPoint(glycol, percent).code).toBe(code)
  })

  test('the more glycol, the colder, all through the range', () => {
    const inRange = fc.double({ min: 10, max: 60, noNaN: true })
    fc.assert(
      fc.property(fc.constantFrom(...glycols), inRange, inRange, (glycol, one, other) => {
        if (Math.abs(one - other) < 1e-6) return
        expect(celsius(glycol, Math.max(one, other))).toBeLessThan(celsius(glycol, Math.min(one, other)))
      }),
    )
  })
})

describe('how strong it must be', () => {
  test.each([
    ['ethylene', -15.7004, 30],
    ['ethylene', -37.1149, 50],
    ['propylene', -33.6614, 50],
    ['propylene', -13.1052, 30],
  ] as const)('%s glycol for %d °C: %d percent', (glycol, lowest, percent) => {
    expect(strengthFor(glycol, lowest)).toEqual({ code: 'strength', percent: expect.closeTo(percent, 2) })
  })

  test('what is found freezes at what was asked for', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...glycols),
        fc.double({ min: -51, max: -3.7, noNaN: true }),
        (glycol, lowest) => {
          const found = strengthFor(glycol, lowest)
          if (found.code !== 'strength') throw new Error(found.code)
          expect(celsius(glycol, found.percent)).toBeCloseTo(lowest, 6)
        },
      ),
    )
  })

  test('at the ends of the range', () => {
    for (const glycol of glycols) {
      expect(strengthFor(glycol, celsius(glycol, 10))).toEqual({
        code: 'strength',
        percent: expect.closeTo(10, 6),
      })
      expect(strengthFor(glycol, celsius(glycol, 60))).toEqual({
        code: 'strength',
        percent: expect.closeTo(60, 6),
      })
    }
  })

  test.each([
    [0, 'no-frost'],
    [5, 'no-frost'],
    [-1, 'warmer-than-range'],
    [-60, 'colder-than-range'],
    [Number.NaN, 'colder-than-range'],
  ])('%d °C: %s', (lowest, code) => {
    for (const glycol of glycols) expect(strengthFor(glycol, lowest).code).toBe(code)
  })
})
