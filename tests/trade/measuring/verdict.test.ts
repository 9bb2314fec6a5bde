import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { boundsOf } from '../../../src/trade/measuring/bounds.ts'
import type { Instrument } from '../../../src/trade/measuring/measurement.ts'
import { verdictOn } from '../../../src/trade/measuring/verdict.ts'

const dial = { resolutionMm: 0.01, typed: 'dial 0.01', kind: 'dial' as const }
const feeler = { resolutionMm: 0.01, typed: 'feeler 0.01', kind: 'feeler' as const }
const verdict = (mm: number, band: { leastMm?: number; mostMm?: number }, instrument?: Instrument) =>
  verdictOn(boundsOf(mm, instrument), band, instrument?.resolutionMm ?? 0)

describe('on the limit and beside it', () => {
  test.each([
    ['read exactly, on the limit', 0.05, undefined, 'in'],
    ['read exactly, a hair beyond', 0.0500001, undefined, 'out'],
    ['dial, limit less half a step', 0.045, dial, 'in'],
    ['dial, a hair nearer', 0.0451, dial, 'too-close'],
    ['dial, on the limit', 0.05, dial, 'too-close'],
    ['dial, a hair before limit and half a step', 0.0549, dial, 'too-close'],
    ['dial, limit and half a step', 0.055, dial, 'out'],
    ['feeler, the next leaf is the limit', 0.04, feeler, 'in'],
    ['feeler, the leaf is the limit', 0.05, feeler, 'too-close'],
    ['feeler, the leaf is beyond', 0.06, feeler, 'out'],
  ] as const)('%s: %d of 0.05 is told %s', (_, mm, instrument, expected) => {
    expect(verdict(mm, { mostMm: 0.05 }, instrument).verdict).toBe(expected)
  })

  test.each([
    ['on the lower limit, exactly', 6.9, undefined, 'in'],
    ['dial, half a step above', 6.905, dial, 'in'],
    ['dial, on it', 6.9, dial, 'too-close'],
    ['dial, half a step below', 6.895, dial, 'out'],
    ['feeler, the leaf is the limit', 6.9, feeler, 'in'],
    ['feeler, between two leaves', 6.895, feeler, 'too-close'],
    ['feeler, the next leaf is the limit', 6.89, feeler, 'out'],
  ] as const)('%s: %d of at least 6.9 is told %s', (_, mm, instrument, expected) => {
    expect(verdict(mm, { leastMm: 6.9 }, instrument).verdict).toBe(expected)
  })

  test('says the limit, and what would decide', () => {
    expect(verdict(0.048, { mostMm: 0.05 }, dial)).toEqual({
      verdict: 'too-close',
      nearMm: 0.05,
      decidesMm: 0.004,
    })
    expect(verdict(0.05, { mostMm: 0.05 }, dial)).toEqual({ verdict: 'too-close', nearMm: 0.05 })
    expect(verdict(0.134, { leastMm: 0.13, mostMm: 0.17 }, dial)).toMatchObject({
      nearMm: 0.13,
      decidesMm: 0.008,
    })
  })

  test('inches and millimetres meet on the limit', () => {
    // 0.006 in is 0.1524 mm: NIST SP 811, appendix B.8.
    expect(verdict(0.006 * 25.4, { mostMm: 0.1524 }).verdict).toBe('in')
    expect(verdict(0.1524, { mostMm: 0.006 * 25.4, leastMm: 0.006 * 25.4 }).verdict).toBe('in')
  })

  test('a band narrower than the instrument resolves is never told in', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100 }), (n) => {
        expect(verdict(n / 1000, { leastMm: 0.05, mostMm: 0.055 }, dial).verdict).not.toBe('in')
      }),
    )
  })
})

describe('any value, limit and instrument', () => {
  const micrometres = fc.integer({ min: 0, max: 2000 }).map((n) => n / 1000)
  const instrument = fc.record({
    resolutionMm: fc.constantFrom(0.001, 0.002, 0.01, 0.0254, 0.05),
    typed: fc.constant(''),
    kind: fc.constantFrom('dial' as const, 'feeler' as const, 'micrometer' as const),
  })
  const order = ['in', 'too-close', 'out']

  test('a larger value is never told nearer to in, of an upper limit', () => {
    fc.assert(
      fc.property(micrometres, micrometres, micrometres, instrument, (a, b, mostMm, by) => {
        const [small, large] = a < b ? [a, b] : [b, a]
        const rank = (mm: number) => order.indexOf(verdict(mm, { mostMm }, by).verdict)
        expect(rank(small)).toBeLessThanOrEqual(rank(large))
      }),
    )
  })

  test('a lower limit is an upper one in a mirror', () => {
    fc.assert(
      fc.property(micrometres, micrometres, fc.constantFrom(0.001, 0.01, 0.05), (mm, limit, resolutionMm) => {
        const by = { resolutionMm, typed: '' }
        expect(verdict(mm, { leastMm: limit }, by)).toEqual({
          ...verdict(-mm, { mostMm: -limit }, by),
          ...('nearMm' in verdict(mm, { leastMm: limit }, by) && { nearMm: limit }),
        })
      }),
    )
  })

  test('what is said to decide does decide', () => {
    fc.assert(
      fc.property(micrometres, micrometres, micrometres, instrument, (mm, a, b, by) => {
        const [leastMm, mostMm] = a < b ? [a, b] : [b, a]
        const { decidesMm } = verdict(mm, { leastMm, mostMm }, by)
        if (decidesMm === undefined) return
        expect(decidesMm).toBeLessThanOrEqual(by.resolutionMm)
        expect(verdict(mm, { leastMm, mostMm }, { ...by, resolutionMm: decidesMm }).verdict).not.toBe(
          'too-close',
        )
      }),
    )
  })
})
