import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { clearanceWith, fits, halfTicksOff, neededShim } from '../../../src/trade/shims/needed-shim.ts'

const valve = (fitted: number, clearance: number, least: number, most: number) => ({
  position: 'E1',
  fitted,
  clearance,
  wanted: { least, most },
})

describe('the shim that a valve needs', () => {
  test.each([
    // new = old + measured - specified, as vehicle service manuals print it: 2.95 fitted, 0.47 measured, 3.15 to be fitted.
    // The specified 0.27 is implied by their figures.
    [valve(2.95, 0.47, 0.27, 0.27), { least: 3.15, middle: 3.15, most: 3.15 }],
    // From the same formula.
    [valve(3.1, 0.1, 0.2, 0.2), { least: 3, middle: 3, most: 3 }],
    [valve(3.3, 0.3, 0.2, 0.2), { least: 3.4, middle: 3.4, most: 3.4 }],
    // A thrust shim in a service manual: total gap 1.93 with none in it, standard 0.11 to 0.17: 1.79, so 1.80 is taken.
    [valve(0, 1.93, 0.11, 0.17), { least: 1.76, middle: 1.79, most: 1.82 }],
    // 0.006 in measured, 0.0980 in fitted, 0.005 to 0.007 in wanted; 1 in = 25.4 mm.
    [valve(2.4892, 0.1524, 0.127, 0.1778), { least: 2.4638, middle: 2.4892, most: 2.5146 }],
  ])('%j needs %j', (measured, needed) => {
    expect(neededShim(measured)).toEqual(needed)
  })

  test('the shim for sale next to the middle leaves the clearance printed', () => {
    expect(clearanceWith(valve(0, 1.93, 0.11, 0.17), 1.8)).toBe(0.13)
    expect(clearanceWith(valve(2.95, 0.47, 0.27, 0.27), 3.15)).toBe(0.27)
  })

  test('both ends of the range belong to it', () => {
    const needed = neededShim(valve(2.5, 0.31, 0.22, 0.28))
    expect(needed).toEqual({ least: 2.53, middle: 2.56, most: 2.59 })
    expect([2.525, 2.53, 2.59, 2.595].map((size) => fits(needed, size))).toEqual([false, true, true, false])
  })

  const hundredths = (least: number, most: number) =>
    fc.integer({ min: least, max: most }).map((count) => count / 200)

  test('a shim fits where the clearance that it leaves is in the range, and is in the middle where it is nearest', () => {
    fc.assert(
      fc.property(
        hundredths(400, 700),
        hundredths(1, 200),
        hundredths(1, 100),
        hundredths(0, 40),
        hundredths(400, 700),
        (fitted, clearance, least, width, size) => {
          const measured = valve(fitted, clearance, least, least + width)
          const needed = neededShim(measured)
          const left = Math.round(clearanceWith(measured, size) * 1000)
          const isWithin = left >= Math.round(least * 1000) && left <= Math.round((least + width) * 1000)
          expect(fits(needed, size)).toBe(isWithin)
          expect(halfTicksOff(needed, size)).toBeCloseTo(
            Math.abs(left / 1000 - least - width / 2) * 200_000,
            3,
          )
        },
      ),
    )
  })
})
