import { describe, expect, test } from 'vitest'
import { readLimits } from '../../../../src/trade/measuring/reading/read-limits.ts'

const mostOnly = { bareIsMost: true }
const either = { bareIsMost: false }

describe('limits', () => {
  test.each([
    ['0.13..0.17', { leastMm: 0.13, mostMm: 0.17 }],
    ['0.13 to 0.17 mm', { leastMm: 0.13, mostMm: 0.17 }],
    ['0.13-0.17', { leastMm: 0.13, mostMm: 0.17 }],
    ['0,13 – 0,17', { leastMm: 0.13, mostMm: 0.17 }],
    ['limits: 0.13…0.17', { leastMm: 0.13, mostMm: 0.17 }],
    ['between 0.13 and 0.17', { leastMm: 0.13, mostMm: 0.17 }],
    ['0.15 ± 0.02', { leastMm: 0.13, mostMm: 0.17 }],
    ['0.15 +/- 0.02 mm', { leastMm: 0.13, mostMm: 0.17 }],
    ['0.15 +0.02 -0.01', { leastMm: 0.14, mostMm: 0.17 }],
    ['max 0.05', { mostMm: 0.05 }],
    ['maximum 0,05', { mostMm: 0.05 }],
    ['0.05 max', { mostMm: 0.05 }],
    ['<= 0.05', { mostMm: 0.05 }],
    ['at most 0.05 mm', { mostMm: 0.05 }],
    ['min 6.9', { leastMm: 6.9 }],
    ['at least 6.9', { leastMm: 6.9 }],
    ['min 6.9 max 7.1', { leastMm: 6.9, mostMm: 7.1 }],
    ['0.05', { mostMm: 0.05 }],
    ['limit 0.05', { mostMm: 0.05 }],
    ['2 thou', { mostMm: 0.0508 }],
    ['0.005 in per 6 in and 0.010 in overall', { mostInSpanMm: 0.127, spanMm: 152.4, mostMm: 0.254 }],
    ['max 0.10, 0.05 in any 100', { mostInSpanMm: 0.05, spanMm: 100, mostMm: 0.1 }],
    [
      '75.99..76.01, out-of-round max 0.02, taper max 0.03',
      { leastMm: 75.99, mostMm: 76.01, outOfRoundMostMm: 0.02, taperMostMm: 0.03 },
    ],
  ])('%s', (typed, limits) => {
    const read = readLimits(typed, mostOnly)
    expect(read).toMatchObject({ understood: true, value: { limits: { typed, ...limits } } })
    expect(read.understood && Object.keys(read.value.limits).sort()).toEqual(
      ['typed', ...Object.keys(limits)].sort(),
    )
  })

  test.each([
    // As printed, each pair within the rounding of its figures.
    ['TM 5-3820-256-24-5', '0.15 mm (0.006 in)', { mostMm: 0.15 }],
    ['TM 5-3820-256-24-5', '0.05 mm (0.002 in.)', { mostMm: 0.05 }],
    ['TM 5-3820-256-24-5', '0.25 mm (0.010 in)', { mostMm: 0.25 }],
    ['TM 5-3820-256-24-5', '106.38 mm (4.188 in)', { mostMm: 106.38 }],
    ['TM 10-3930-653-14&P', '0.1 mm (0.004 in)', { mostMm: 0.1 }],
    ['TM 9-2815-254-24', '0.018-0.065 mm (0.0007-0.0025 in)', { leastMm: 0.018, mostMm: 0.065 }],
    ['TM 9-2815-254-24', '0.0047 in (0.12 mm)', { mostMm: 0.11938 }],
    ['TM 5-3805-258-24-2', '0.076-0.165 mm (0.0030-0.0065 in)', { leastMm: 0.076, mostMm: 0.165 }],
    ['TM 5-3805-258-24-2', '0.064-0.368 mm (0.0025-0.0145 in)', { leastMm: 0.064, mostMm: 0.368 }],
    ['TM 5-3805-258-24-2', '0.64 mm (0.025 in)', { mostMm: 0.64 }],
    ['TM 9-2815-256-24', '0.006 in (0.15 mm)', { mostMm: 0.1524 }],
    ['service data', '0.003 in (0.08 mm)', { mostMm: 0.0762 }],
    ['service data', '0.2 mm (0.008 in)', { mostMm: 0.2 }],
  ])('%s prints %s', (_, typed, limits) => {
    expect(readLimits(typed, mostOnly)).toMatchObject({ understood: true, value: { limits } })
  })

  test.each([
    // TM 5-3820-256-24-5 prints this for 0.10 mm; a service sheet the second.
    ['0.01 mm (0.004 in.)', '0.004 in'],
    ['1.0 mm (0.004 inch)', '0.004 inch'],
    ['max 0.15 mm (0.004 in)', '0.004 in'],
    ['0.018-0.65 mm (0.0007-0.0025 in)', '0.0007 in..0.0025 in'],
  ])('%s does not agree with itself: a misprint or a slip', (typed, nearest) => {
    const part = typed.replace('max ', '')
    expect(readLimits(typed, mostOnly)).toEqual({ understood: false, code: 'dual-units', part, nearest })
  })

  test.each([
    ['', 'empty', 'max 0.05'],
    ['0.17..0.13', 'turned-round', '0.13..0.17'],
    ['min 7.1 max 6.9', 'turned-round', '6.9..7.1'],
    ['max', 'limits', 'max 0.05'],
    ['about 0.05', 'limits', 'max 0.05'],
    ['max 0.05 max 0.06', 'limits', 'max 0.06'],
    ['max 0.010 in, 0.005 per 6 in', 'unit', '0.005 in'],
    ['0.10 (0.004)', 'unit', '0.10 mm (0.004 in)'],
  ])('%s is not understood', (typed, code, nearest) => {
    expect(readLimits(typed, mostOnly)).toMatchObject({ understood: false, code, nearest })
    expect(readLimits(nearest, mostOnly).understood).toBe(true)
  })

  test.each([
    ['0.15', 'max 0.15'],
    ['limit 0.15 mm', 'max 0.15 mm'],
  ])('of a size, %s alone may be the most or the least', (typed, nearest) => {
    expect(readLimits(typed, either)).toMatchObject({ understood: false, code: 'bare-limit', nearest })
    expect(readLimits(nearest, either).understood).toBe(true)
  })
})
