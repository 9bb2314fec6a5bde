import fc from 'fast-check'
import { lgamma } from 'mathjs'
import { describe, expect, test } from 'vitest'
import { asFraction, chanceOf } from './binomial.ts'
import { incompleteBeta, logGamma } from './incomplete-beta.ts'

/** The difference as a part of what it should be. */
const off = (found: number, wanted: number) => Math.abs(found - wanted) / Math.abs(wanted || 1)

describe('the logarithm of the gamma function', () => {
  test.each([
    // DLMF 5.4.6, 5.4.1: gamma(1/2) is the square root of pi, gamma(n + 1) is n!.
    [0.5, Math.log(Math.PI) / 2],
    [6, Math.log(120)],
    [21, Math.log(2_432_902_008_176_640_000)],
  ])('of %d', (x, wanted) => expect(off(logGamma(x), wanted)).toBeLessThan(2e-14))

  test('as a general library has it, from a thousandth to a million', () => {
    for (let x = 0.001; x < 2e6; x *= 1.37)
      // Near 1 and 2 it goes through nothing, so it is held to the difference there; the library's own is good to 12 figures.
      expect(Math.abs(logGamma(x) - lgamma(x))).toBeLessThan(1e-11 * Math.max(1, Math.abs(lgamma(x))))
  })
})

describe('the incomplete beta function', () => {
  test('beside exact sums of the binomial distribution, which it is for whole numbers (DLMF 8.17.5)', () => {
    for (const tries of [1, 2, 3, 7, 20, 41])
      for (let hits = 1; hits <= tries; hits += 1)
        for (const share of [0.001, 0.1, 0.37, 0.5, 0.9, 0.9995]) {
          const wanted = chanceOf([hits, tries], tries, asFraction(share))
          expect(off(incompleteBeta(share, hits, tries - hits + 1), wanted)).toBeLessThan(1e-12)
        }
  })

  test('where a single miss is all there is in ten thousand tries and in a million', () => {
    expect(off(incompleteBeta(0.9999, 10_000, 1), 0.9999 ** 10_000)).toBeLessThan(1e-9)
    expect(off(incompleteBeta(1e-6, 1, 1_000_000), -Math.expm1(1e6 * Math.log1p(-1e-6)))).toBeLessThan(1e-9)
    const twoInThousand = chanceOf([998, 1000], 1000, asFraction(0.998))
    expect(off(incompleteBeta(0.998, 998, 3), twoInThousand)).toBeLessThan(1e-11)
  })

  test('what is above a share and what is below it make the whole', () => {
    const count = fc.integer({ min: 1, max: 5000 })
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), count, count, (x, a, b) => {
        expect(incompleteBeta(x, a, b) + incompleteBeta(1 - x, b, a)).toBeCloseTo(1, 10)
      }),
    )
  })

  test('half of it is below the middle where both sides are alike', () => {
    for (const a of [0.5, 1, 3, 40, 25_000]) expect(incompleteBeta(0.5, a, a)).toBeCloseTo(0.5, 9)
  })

  test.each([
    [-0.1, 1, 1],
    [1.1, 1, 1],
    [0.5, 0, 1],
    [0.5, 1, Number.NaN],
  ])('of %d, %d, %d there is none', (x, a, b) => {
    expect(() => incompleteBeta(x, a, b)).toThrow('no incomplete beta')
  })
})
