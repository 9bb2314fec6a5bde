import { describe, expect, test } from 'vitest'
import { asFraction, chanceOf } from './binomial.ts'
import { atLeast, atMost, confidenceLimits } from './interval.ts'

describe('published values', () => {
  test.each([
    // Results of R 3.6.2, binom.test, as kept in the tests of SciPy (scipy/stats/tests/test_morestats.py).
    { hits: 20, tries: 100, low: 0.1266555521019559, high: 0.2918426890886281, to: 1e-12 },
    { hits: 0, tries: 10, low: 0, high: 0.3084971, to: 5e-8 },
    { hits: 10, tries: 10, low: 0.6915029, high: 1, to: 5e-8 },
    // Boost.Math, "Calculating Confidence Limits on the Frequency of Occurrence", the columns CP (doc/distributions/
    // binomial_example.qbk at 4b1f2de5).
    { hits: 4, tries: 20, low: 0.05733, high: 0.43661, to: 5e-6 },
    { hits: 400, tries: 2000, low: 0.18267, high: 0.21821, to: 5e-6 },
  ])('$hits of $tries: $low to $high', ({ hits, tries, low, high, to }) => {
    const limits = confidenceLimits(hits, tries)
    expect(Math.abs(limits.low - low)).toBeLessThanOrEqual(to)
    expect(Math.abs(limits.high - high)).toBeLessThanOrEqual(to)
  })

  test.each([
    // R 3.6.2, binom.test, alternative "less" and "greater", as kept in the tests of SciPy (see above).
    { hits: 20, tries: 100, least: 0.1366613252458672, most: 0.2772002496709138, to: 1e-12 },
    { hits: 0, tries: 10, least: 0, most: 0.2588656, to: 5e-8 },
    { hits: 10, tries: 10, least: 0.7411344, most: 1, to: 5e-8 },
    // Boost.Math, as above, at 90 %: both sides at 90 % are one side each at 95 %. It is also the case of the NIST/SEMATECH
    // e-Handbook of Statistical Methods, 7.2.4.1.
    { hits: 4, tries: 20, least: 0.07135, most: 0.40103, to: 5e-6 },
    // The examples of clopper.pearson.ci in the R package GenBinomApps, at 90 % both sides.
    { hits: 5, tries: 100_000, least: 1.97017e-5, most: 0.0001051275, to: 5e-11 },
  ])('on one side, $hits of $tries: $least, $most', ({ hits, tries, least, most, to }) => {
    expect(Math.abs(atLeast(hits, tries) - least)).toBeLessThanOrEqual(to)
    expect(Math.abs(atMost(hits, tries) - most)).toBeLessThanOrEqual(to)
  })
})

describe('none and all', () => {
  test.each([1, 2, 59, 1000, 10_000, 1_000_000])('of %d', (tries) => {
    const high = -Math.expm1(Math.log(0.025) / tries)
    expect(confidenceLimits(0, tries).low).toBe(0)
    expect(confidenceLimits(0, tries).high / high).toBeCloseTo(1, 8)
    expect(confidenceLimits(tries, tries).high).toBe(1)
    expect(confidenceLimits(tries, tries).low).toBeCloseTo(0.025 ** (1 / tries), 12)
  })

  test('of none, one side alone comes to the rule of three', () => {
    // 1 - 0.05^(1/n) is 3 / n and less: -ln 0.05 is 2.9957 (Hanley, Lippman-Hand, JAMA 249, 1983: 3/n).
    for (const tries of [30, 1000, 1_000_000]) {
      expect(atMost(0, tries)).toBeLessThan(3 / tries)
      expect(atMost(0, tries)).toBeGreaterThan(2.85 / tries)
    }
  })

  test('where nothing was tried, nothing is known', () => {
    expect(confidenceLimits(0, 0)).toEqual({ low: 0, high: 1 })
    expect(atMost(0, 0)).toBe(1)
    expect(atLeast(0, 0)).toBe(0)
  })
})

describe('beside exact sums of the binomial distribution', () => {
  const cases = [1, 2, 5, 13, 40].flatMap((tries) =>
    Array.from({ length: tries + 1 }, (_, hits) => [hits, tries] as const),
  )

  test.each([...cases, [997, 1000], [1000, 1000], [3, 1000]] as const)(
    'at the limits of %d of %d what was seen is as seldom as said',
    (hits, tries) => {
      const { low, high } = confidenceLimits(hits, tries)
      if (hits > 0) expect(chanceOf([hits, tries], tries, asFraction(low))).toBeCloseTo(0.025, 11)
      if (hits < tries) expect(chanceOf([0, hits], tries, asFraction(high))).toBeCloseTo(0.025, 11)
      if (hits > 0)
        expect(chanceOf([hits, tries], tries, asFraction(atLeast(hits, tries)))).toBeCloseTo(0.05, 11)
      if (hits < tries)
        expect(chanceOf([0, hits], tries, asFraction(atMost(hits, tries)))).toBeCloseTo(0.05, 11)
    },
  )
})

describe('how often the limits hold what is so', () => {
  /** The chance that limits made of so many tries hold a share, over everything that may be seen. */
  function coverage(share: number, tries: number, holds: (hits: number) => boolean): number {
    const seen = Array.from({ length: tries + 1 }, (_, hits) => hits).filter(holds)
    return seen.reduce((sum, hits) => sum + chanceOf([hits, hits], tries, asFraction(share)), 0)
  }

  test.each([1, 2, 3, 5, 10, 17, 30])('in %d tries: 95 % and more, wherever the share is', (tries) => {
    const all = Array.from({ length: tries + 1 }, (_, hits) => confidenceLimits(hits, tries))
    const most = all.map((_, hits) => atMost(hits, tries))
    // It is least just beside a limit, where one more of what may be seen falls out.
    const beside = all.flatMap(({ low, high }) => [low - 1e-9, low + 1e-9, high - 1e-9, high + 1e-9])
    const between = Array.from({ length: 41 }, (_, step) => step / 40)
    const shares = [...beside, ...most.map((limit) => limit + 1e-9), ...between]
    for (const share of shares.filter((each) => each >= 0 && each <= 1)) {
      const within = (hits: number) => {
        const { low, high } = all[hits] ?? { low: 1, high: 0 }
        return low <= share && share <= high
      }
      expect(coverage(share, tries, within)).toBeGreaterThanOrEqual(0.95)
      expect(coverage(share, tries, (hits) => share <= (most[hits] ?? 0))).toBeGreaterThanOrEqual(0.95 - 1e-7)
    }
  })

  test('with the whole risk on one side at none and all it would be less, so that is not done', () => {
    const tries = 30
    const share = atMost(0, tries) + 1e-9
    const narrower = (hits: number) => {
      const { low, high } = confidenceLimits(hits, tries)
      return low <= share && share <= (hits === 0 ? atMost(0, tries) : high)
    }
    expect(coverage(share, tries, narrower)).toBeLessThan(0.945)
  })
})

describe('in order', () => {
  test('more hits move both limits up, more tries draw them together', () => {
    for (let hits = 1; hits <= 40; hits += 1) {
      expect(confidenceLimits(hits, 40).low).toBeGreaterThan(confidenceLimits(hits - 1, 40).low)
      expect(confidenceLimits(hits, 40).high).toBeGreaterThan(confidenceLimits(hits - 1, 40).high)
    }
    const widths = [10, 100, 1000, 10_000].map((tries) => {
      const { low, high } = confidenceLimits(tries / 10, tries)
      return high - low
    })
    expect(widths).toEqual([...widths].sort((a, b) => b - a))
  })

  test.each([
    [-1, 10],
    [11, 10],
    [1.5, 10],
    [Number.NaN, 10],
    [0, Number.POSITIVE_INFINITY],
  ])('%d of %d is refused', (hits, tries) => {
    for (const limit of [confidenceLimits, atMost, atLeast])
      expect(() => limit(hits, tries)).toThrow('is no share')
  })
})
