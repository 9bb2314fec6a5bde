import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { judge } from '../../../src/trade/measuring/judge.ts'
import type { Measurement, TakenReading } from '../../../src/trade/measuring/measurement.ts'

const inch = 25.4 // mm, exact: NIST SP 811, appendix B.8

describe('flatness under a straight-edge', () => {
  test.each([
    // TM 5-3820-256-24-5, cylinder head lengthwise: resurface if 0.15 mm (0.006 in) enters.
    ['TM 5-3820-256-24-5, lengthwise', 0.15, [0.05, 0.1, 0.12], 'in'],
    ['TM 5-3820-256-24-5, lengthwise', 0.15, [0.05, 0.17], 'out'],
    ['TM 5-3820-256-24-5, crosswise, 0.004 in', 0.004 * inch, [0.09], 'in'],
    ['TM 5-3820-256-24-5, crosswise, 0.004 in', 0.004 * inch, [0.095], 'too-close'],
    ['TM 10-3930-653-14&P, surface', 0.1, [0.02, 0.11, 0.03], 'out'],
  ] as const)('%s: max %d, gaps %j: %s', (_, mostMm, gaps, verdict) => {
    const judged = judge(flatness(gaps, { mostMm }))
    expect(judged.verdict).toBe(verdict)
    expect(judged.results[0]?.mm).toBe(Math.max(...gaps))
  })

  test('the largest gap wins, and says its line', () => {
    const readings = [reading(0.02, { at: 'front' }), reading(0.05, { at: 'diagonal' }), reading(0.03)]
    expect(judge({ kind: 'flatness', readings })).toEqual({
      results: [
        expect.objectContaining({ what: 'flatness', at: 'diagonal', mm: 0.05, lowMm: 0.05, verdict: null }),
      ],
      verdict: null,
      lacking: [{ what: 'limits' }, { what: 'resolution' }],
    })
  })

  // From a service data sheet: 0.005 in per 6 in in any direction and 0.010 in overall.
  const twoParts = { mostMm: 0.01 * inch, spanMm: 6 * inch, mostInSpanMm: 0.005 * inch }

  test('a limit of two parts fails 0.006 in inside 6 in, although 0.006 in is allowed overall', () => {
    const judged = judge({
      kind: 'flatness',
      readings: [reading(0.006 * inch, { spanMm: 6 * inch })],
      limits: { ...twoParts, typed: '0.005 in per 6 in and 0.010 in overall' },
    })
    expect(judged.results.map(({ what, verdict }) => [what, verdict])).toEqual([
      ['flatness', 'in'],
      ['flatness-in-span', 'out'],
    ])
    expect(judged.verdict).toBe('out')
  })

  test.each([
    ['0.004 in anywhere', reading(0.004 * inch), 'in', []],
    ['0.005 in inside 6 in', reading(0.005 * inch, { spanMm: 6 * inch }), 'in', []],
    ['0.006 in under a straight-edge of 20 in', reading(0.006 * inch, { spanMm: 508 }), null, ['span']],
    ['0.006 in somewhere', reading(0.006 * inch), null, ['span']],
    ['0.011 in somewhere', reading(0.011 * inch), 'out', ['span']],
    ['0.006 in inside 3 in', reading(0.006 * inch, { spanMm: 3 * inch }), 'out', []],
  ])('with both parts, %s', (_, gap, verdict, lacking) => {
    const judged = judge({ kind: 'flatness', readings: [gap], limits: { ...twoParts, typed: '' } })
    expect(judged.verdict).toBe(verdict)
    expect(judged.lacking.map(({ what }) => what)).toEqual([...lacking, 'resolution'])
  })
})

describe('flatness over a grid', () => {
  const grid = (rows: number[][], more: Partial<Measurement> = {}): Measurement => ({
    kind: 'flatness-grid',
    columns: rows[0]?.length,
    readings: rows.flat().map((mm) => reading(mm)),
    ...more,
  })

  test('a tilted plane is flat', () => {
    const rows = [0, 1, 2].map((y) => [0, 1, 2, 3].map((x) => 0.1 + 0.03 * x - 0.07 * y))
    expect(judge(grid(rows)).results[0]?.mm).toBe(0)
  })

  test('a twist stays, whole: from peak to valley, with the points', () => {
    // z = xy/10 at four corners: the best plane leaves +0.025, -0.025, -0.025, +0.025.
    const twist = [
      [0, 0],
      [0, 0.1],
    ]
    expect(judge(grid(twist)).results[0]).toMatchObject({ mm: 0.05, peak: '1/1', valley: '1/2' })
  })

  test('two parts: a step between neighbours is found where the whole is flat enough', () => {
    const rows = [0, 1, 2].map(() => [0, 0, 0.06, 0, 0, 0])
    const limits = { typed: '', mostMm: 0.1, spanMm: 100, mostInSpanMm: 0.05 }
    const judged = judge(grid(rows, { columnStepMm: 50, rowStepMm: 50, limits }))
    expect(judged.results.map(({ what, verdict }) => [what, verdict])).toEqual([
      ['flatness', 'in'],
      ['flatness-in-span', 'out'],
    ])
    expect(judge(grid(rows, { limits }))).toMatchObject({
      verdict: null,
      lacking: [{ what: 'spacing' }, { what: 'resolution' }],
    })
    const wide = judge(grid(rows, { columnStepMm: 80, rowStepMm: 80, limits }))
    expect(wide.lacking[0]).toEqual({ what: 'span' })
  })

  test.each([
    ['one row', 3, [1, 2, 3]],
    ['one column', 1, [1, 2, 3]],
    ['a row that is not full', 3, [1, 2, 3, 4]],
    ['no columns said', undefined, [1, 2, 3, 4]],
  ])('%s is no grid', (_, columns, values) => {
    const readings = values.map((mm) => reading(mm))
    expect(judge({ kind: 'flatness-grid', columns, readings })).toMatchObject({
      results: [],
      verdict: null,
      lacking: [{ what: 'grid' }, { what: 'resolution' }],
    })
  })

  test('adding a plane changes nothing', () => {
    const height = fc.integer({ min: -200, max: 200 }).map((n) => n / 1000)
    const rows = fc
      .tuple(fc.integer({ min: 2, max: 5 }), fc.integer({ min: 2, max: 5 }))
      .chain(([h, w]) =>
        fc.array(fc.array(height, { minLength: w, maxLength: w }), { minLength: h, maxLength: h }),
      )
    fc.assert(
      fc.property(rows, height, height, height, (heights, a, b, c) => {
        const tilted = heights.map((row, y) => row.map((z, x) => z + a + b * x + c * y))
        expect(judge(grid(tilted)).results[0]?.mm).toBeCloseTo(judge(grid(heights)).results[0]?.mm ?? NaN, 8)
      }),
    )
  })
})

describe('bores and journals', () => {
  const bore = (kind: Measurement['kind']): Measurement => ({
    kind,
    readings: [
      reading(80.01, { height: 'top', axis: 'x' }),
      reading(80.04, { height: 'top', axis: 'y' }),
      reading(80.01, { height: 'mid', axis: 'x' }),
      reading(80.02, { height: 'mid', axis: 'y' }),
      reading(80.0, { height: 'bottom', axis: 'x' }),
      reading(80.01, { height: 'bottom', axis: 'y' }),
    ],
  })

  test('out-of-round: the largest difference of two axes at one height', () => {
    expect(judge(bore('out-of-round')).results).toEqual([
      expect.objectContaining({ what: 'out-of-round', height: 'top', mm: 0.03, from: [80.04, 80.01] }),
    ])
  })

  test('taper: the largest difference between heights along one axis', () => {
    expect(judge(bore('taper')).results).toEqual([
      expect.objectContaining({ what: 'taper', axis: 'y', mm: 0.03, from: [80.04, 80.01] }),
    ])
  })

  test('a size says both beside each size, against limits of their own', () => {
    const limits = { typed: '', leastMm: 80, mostMm: 80.05, outOfRoundMostMm: 0.02, taperMostMm: 0.05 }
    const { results, verdict } = judge({ ...bore('size'), limits })
    expect(results.map(({ what, verdict }) => [what, verdict])).toEqual([
      ...Array.from({ length: 6 }, () => ['size', 'in']),
      ['out-of-round', 'out'],
      ['taper', 'in'],
    ])
    expect(verdict).toBe('out')
  })

  test('sizes without axes and heights are sizes', () => {
    const readings = [reading(28.01, { at: 'I1' }), reading(28.02, { at: 'I2' })]
    expect(judge({ kind: 'size', readings }).results.map(({ what, at }) => [what, at])).toEqual([
      ['size', 'I1'],
      ['size', 'I2'],
    ])
  })

  test.each([
    ['out-of-round', [reading(80, { height: 'top' }), reading(80, { height: 'mid' })], 'second-axis'],
    ['taper', [reading(80, { axis: 'x' }), reading(80, { axis: 'y' })], 'second-height'],
    ['clearance', [reading(80, { role: 'bore' })], 'journal'],
    ['clearance', [reading(80, { role: 'journal' })], 'bore'],
    ['stretch', [reading(80, { role: 'before' })], 'after'],
    ['stretch', [reading(80, { role: 'after' })], 'before'],
  ] as const)('%s lacks a reading that belongs to another', (kind, readings, what) => {
    const judged = judge({ kind, readings: [...readings], limits: { typed: '', mostMm: 100 } })
    expect(judged).toMatchObject({ results: [], verdict: null })
    expect(judged.lacking[0]?.what).toBe(what)
  })
})

describe('clearance, stretch, run-out, valve clearance', () => {
  test.each([
    // TM 5-4320-300-14: plastic strip, max 0.006 in (0.1524 mm).
    ['TM 5-4320-300-14', 0.1524, 0.004 * inch, 'in'],
    ['TM 5-4320-300-14', 0.1524, 0.007 * inch, 'out'],
    // TM 9-2815-254-24: limit 0.0047 in (0.12 mm).
    ['TM 9-2815-254-24', 0.12, 0.005 * inch, 'out'],
    ['TM 9-2815-254-24', 0.12, 0.0025 * inch, 'in'],
    // TM 5-3805-258-24-2: used max 0.25 mm (0.010 in).
    ['TM 5-3805-258-24-2', 0.25, 0.0065 * inch, 'in'],
  ] as const)('%s: strip, max %d mm, read %d mm: %s', (_, mostMm, mm, verdict) => {
    const readings = [reading(mm)]
    expect(judge({ kind: 'clearance', readings, limits: { typed: '', mostMm } }).verdict).toBe(verdict)
  })

  test('a bore and a journal, each to 0.01: their difference may be off by 0.01', () => {
    const judged = judge({
      kind: 'clearance',
      readings: [
        reading(28.03, { at: 'I1', role: 'bore' }),
        reading(27.98, { at: 'I1', role: 'journal' }),
        reading(28.02, { at: 'I2', role: 'bore' }),
        reading(27.98, { at: 'I2', role: 'journal' }),
      ],
      instrument: { resolutionMm: 0.01, typed: '0.01' },
      limits: { typed: 'max 0.05', mostMm: 0.05 },
    })
    expect(judged.results).toEqual([
      expect.objectContaining({ at: 'I1', mm: 0.05, lowMm: 0.04, highMm: 0.06, verdict: 'too-close' }),
      expect.objectContaining({ at: 'I2', mm: 0.04, lowMm: 0.03, highMm: 0.05, verdict: 'in' }),
    ])
    expect(judged.results[0]?.decidesMm).toBeUndefined()
  })

  test('stretch: after less before', () => {
    const readings = [reading(90, { role: 'before' }), reading(90.12, { role: 'after' })]
    expect(judge({ kind: 'stretch', readings }).results).toEqual([
      expect.objectContaining({ what: 'stretch', mm: 0.12, from: [90.12, 90] }),
    ])
  })

  test('run-out: the total that the dial shows, around a turn or read at once', () => {
    const around = [reading(-0.01), reading(0.02), reading(0)]
    expect(judge({ kind: 'run-out', readings: around }).results).toEqual([
      expect.objectContaining({ mm: 0.03, from: [0.02, -0.01] }),
    ])
    const totals = [reading(0.02, { at: 'front' }), reading(0.03, { at: 'rear' })]
    expect(judge({ kind: 'run-out', readings: totals }).results.map(({ at, mm }) => [at, mm])).toEqual([
      ['front', 0.02],
      ['rear', 0.03],
    ])
  })

  test('valve clearance: one verdict for each valve, by feelers of 0.01', () => {
    const judged = judge({
      kind: 'valve-clearance',
      readings: ['I1', 'I2', 'I3', 'I4'].map((at, i) => reading([0.12, 0.13, 0.16, 0.17][i] ?? 0, { at })),
      instrument: { resolutionMm: 0.01, typed: 'feeler 0.01', kind: 'feeler' },
      limits: { typed: '0.13..0.17', leastMm: 0.13, mostMm: 0.17 },
    })
    // The leaf of 0.12 enters and that of 0.13 does not: the clearance is less than 0.13.
    expect(judged.results.map(({ at, verdict }) => [at, verdict])).toEqual([
      ['I1', 'out'],
      ['I2', 'in'],
      ['I3', 'in'],
      ['I4', 'too-close'],
    ])
  })
})

test('the order of the readings changes nothing but the order of the results', () => {
  const of = fc.record({
    mm: fc.integer({ min: 0, max: 500 }).map((n) => n / 1000),
    at: fc.constantFrom('1', '2'),
    height: fc.constantFrom('top', 'bottom'),
    axis: fc.constantFrom('x', 'y'),
  })
  const kind = fc.constantFrom('flatness', 'size', 'out-of-round', 'taper', 'run-out', 'clearance', 'length')
  fc.assert(
    fc.property(
      fc.array(of, { minLength: 1, maxLength: 10 }),
      kind,
      fc.infiniteStream(fc.nat()),
      (all, k, ranks) => {
        const told = (readings: typeof all) => {
          const judged = judge({
            kind: k as Measurement['kind'],
            readings: readings.map(({ mm, ...more }) => reading(mm, more)),
            limits: { typed: '', mostMm: 0.25 },
            instrument: { resolutionMm: 0.01, typed: '' },
          })
          const results = judged.results.map(({ what, mm, verdict }) => [what, mm, verdict].join(' '))
          return [
            judged.verdict,
            results.sort(),
            judged.lacking.map(({ what, at }) => `${what} ${at}`).sort(),
          ]
        }
        const ranked = all.map((one) => ({ one, rank: ranks.next().value }))
        expect(told(ranked.sort((a, b) => a.rank - b.rank).map(({ one }) => one))).toEqual(told(all))
      },
    ),
  )
})

function flatness(gaps: readonly number[], limits: { mostMm: number }): Measurement {
  return {
    kind: 'flatness',
    readings: gaps.map((mm) => reading(mm)),
    instrument: { resolutionMm: 0.01, typed: 'feeler 0.01', kind: 'feeler' },
    limits: { ...limits, typed: '' },
  }
}

function reading(mm: number, more: Partial<TakenReading> = {}): TakenReading {
  return { mm, typed: String(mm), ...more }
}
