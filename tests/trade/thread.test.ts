import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readThread, type Thread, threadsPerInch, threadText } from '../../src/trade/thread.ts'
import { metricSeries, pitchesOf, taperPipeSeries, unifiedSeries } from '../../src/trade/thread-series.ts'

function read(text: string): Thread {
  const reading = readThread(text)
  if (!reading.understood) throw new Error(`not understood: ${text}: ${reading.code}`)
  return reading.value
}

describe('metric threads', () => {
  test.each([
    ['M8', { size: 'M8', diameterMm: 8, pitchMm: 1.25, pitchAssumed: true }],
    ['M8x45', { size: 'M8', diameterMm: 8, pitchMm: 1.25, pitchAssumed: true, lengthMm: 45 }],
    ['M8x1', { size: 'M8', diameterMm: 8, pitchMm: 1, pitchAssumed: false }],
    ['M8x1.25', { size: 'M8', diameterMm: 8, pitchMm: 1.25, pitchAssumed: false }],
    ['M8x1.25x45', { size: 'M8', diameterMm: 8, pitchMm: 1.25, pitchAssumed: false, lengthMm: 45 }],
    ['M8x1,25x45', { size: 'M8', diameterMm: 8, pitchMm: 1.25, pitchAssumed: false, lengthMm: 45 }],
    ['M8-1.25x45', { size: 'M8', diameterMm: 8, pitchMm: 1.25, pitchAssumed: false, lengthMm: 45 }],
    ['M6 x 25', { size: 'M6', diameterMm: 6, pitchMm: 1, pitchAssumed: true, lengthMm: 25 }],
    ['M6X25', { size: 'M6', diameterMm: 6, pitchMm: 1, pitchAssumed: true, lengthMm: 25 }],
    ['m6x25', { size: 'M6', diameterMm: 6, pitchMm: 1, pitchAssumed: true, lengthMm: 25 }],
    ['M6×25', { size: 'M6', diameterMm: 6, pitchMm: 1, pitchAssumed: true, lengthMm: 25 }],
    ['M6*25', { size: 'M6', diameterMm: 6, pitchMm: 1, pitchAssumed: true, lengthMm: 25 }],
    ['M6x25mm', { size: 'M6', diameterMm: 6, pitchMm: 1, pitchAssumed: true, lengthMm: 25 }],
    ['M2,5x8', { size: 'M2.5', diameterMm: 2.5, pitchMm: 0.45, pitchAssumed: true, lengthMm: 8 }],
    ['M5x2', { size: 'M5', diameterMm: 5, pitchMm: 0.8, pitchAssumed: true, lengthMm: 2 }],
    ['M16x2', { size: 'M16', diameterMm: 16, pitchMm: 2, pitchAssumed: false }],
    ['M12x1.5x40', { size: 'M12', diameterMm: 12, pitchMm: 1.5, pitchAssumed: false, lengthMm: 40 }],
    // Too short for a length and no pitch of the standard: an odd pitch, to be asked about.
    ['M8x1.5', { size: 'M8', diameterMm: 8, pitchMm: 1.5, pitchAssumed: false }],
    ['M12x2', { size: 'M12', diameterMm: 12, pitchMm: 2, pitchAssumed: false }],
  ])('%s', (typed, thread) => {
    expect(read(typed)).toEqual({ system: 'metric', ...thread, typed })
  })

  test('M26, a size with fine pitches only, gets none assumed', () => {
    expect(read('M26')).toEqual({
      system: 'metric',
      size: 'M26',
      diameterMm: 26,
      pitchAssumed: false,
      typed: 'M26',
    })
  })
})

describe('inch threads', () => {
  test.each([
    ['3/8-16x1-1/2', 'unified', '3/8', 9.525, 16, 38.1],
    ['1/4-20 x 3/4', 'unified', '1/4', 6.35, 20, 19.05],
    ['1/4"-20 x 1½"', 'unified', '1/4', 6.35, 20, 38.1],
    ['1/4-20 x 1 1/2', 'unified', '1/4', 6.35, 20, 38.1],
    ['5/16-24x.75', 'unified', '5/16', 7.9375, 24, 19.05],
    ['#10-32', 'unified', '#10', 4.826, 32, undefined],
    ['10-32', 'unified', '#10', 4.826, 32, undefined],
    ['no. 10-24 x 1/2', 'unified', '#10', 4.826, 24, 12.7],
    ['3/8 UNC', 'unified', '3/8', 9.525, 16, undefined],
    ['3/8 UNF x 1', 'unified', '3/8', 9.525, 24, 25.4],
    ['1-8', 'unified', '1', 25.4, 8, undefined],
    ['1-1/4-12', 'unified', '1-1/4', 31.75, 12, undefined],
    ['1 1/4-7', 'unified', '1-1/4', 31.75, 7, undefined],
    ['4/8-13', 'unified', '1/2', 12.7, 13, undefined],
    // ASME B1.20.1: the pipe of nominal size 1/4 measures 0.540 in outside.
    ['1/4 NPT', 'npt', '1/4', 13.716, 18, undefined],
    ['1/4-18 NPT', 'npt', '1/4', 13.716, 18, undefined],
    ['1/8-27 npt', 'npt', '1/8', 10.287, 27, undefined],
  ] as const)('%s', (typed, system, size, diameterMm, perInch, lengthMm) => {
    const thread = read(typed)
    expect(thread).toMatchObject({ system, size, diameterMm, pitchAssumed: false, typed })
    expect(thread.lengthMm).toBe(lengthMm)
    expect(threadsPerInch(thread)).toBe(perInch)
    expect(thread.pitchMm).toBeCloseTo(25.4 / perInch, 12)
  })

  test('3/8x1: the coarse pitch is filled in', () => {
    expect(read('3/8x1')).toMatchObject({
      size: '3/8',
      pitchMm: 25.4 / 16,
      pitchAssumed: true,
      lengthMm: 25.4,
    })
  })
})

describe('what is no thread', () => {
  test.each([
    ['', 'empty', 'M8x45'],
    ['M6x', 'form', 'M6x25'],
    ['M', 'form', 'M8x30'],
    ['bolt', 'form', 'M8x45'],
    ['M8x+5', 'form', 'M8x30'],
    ['M8xx5', 'form', 'M8x30'],
    ['M13x20', 'size', 'M12x20'],
    ['M0x3', 'size', 'M1x3'],
    ['M8x45x1.25', 'pitch', 'M8x1.25x45'],
    ['M8x9x45', 'pitch', 'M8x1.25x45'],
    ['M8x0', 'pitch', 'M8x1.25'],
    ['M8x1-1/2', 'length', 'M8x38'],
    ['M8x4500', 'length', 'M8x30'],
    ['M8x1x0', 'length', 'M8x30'],
    ['3/8', 'pitch', '3/8-16'],
    ['#10', 'pitch', '#10-24'],
    ['1x2', 'pitch', '1-8'],
    ['3/8-24 UNC', 'pitch', '3/8-16'],
    ['3/8-2', 'pitch', '3/8-16'],
    ['1/4-20 NPT', 'pitch', '1/4 NPT'],
    ['#7-32', 'size', '#6-32'],
    ['1/3-20', 'size', '5/16-18'],
    ['5/7 NPT', 'size', '1/4 NPT'],
    ['1/4-20x50', 'length', '1/4-20x2'],
    ['1/4-20x0', 'length', '1/4-20x1-1/2'],
    ['1/4-20x1/3', 'length', '1/4-20x1-1/2'],
    ['M8x1x0.2', 'length', 'M8x30'],
    ['M13x9999', 'size', 'M12'],
  ])('%j: %s, nearest %s', (typed, code, nearest) => {
    expect(readThread(typed)).toEqual({ understood: false, code, part: typed, nearest })
    expect(readThread(nearest)).toMatchObject({ understood: true })
  })

  test('any text is read or refused with a form that is read', () => {
    const pieces = fc.constantFrom(
      'M',
      'm8',
      '#',
      '10',
      '3/8',
      '-',
      'x',
      '×',
      '1.25',
      ',',
      ' ',
      '1/2',
      'NPT',
      '"',
      'é',
      '.',
    )
    const texts = fc.oneof(
      fc.string({ unit: 'grapheme' }),
      fc.array(pieces, { maxLength: 9 }).map((p) => p.join('')),
    )
    fc.assert(
      fc.property(texts, (text) => {
        const reading = readThread(text)
        if (!reading.understood) expect(readThread(reading.nearest).understood).toBe(true)
        else expect(threadText(read(threadText(reading.value)))).toBe(threadText(reading.value))
      }),
      { numRuns: 2000 },
    )
  })
})

describe('written back as a mechanic writes it', () => {
  test.each([
    ['M6 X 25', 'M6x25'],
    ['m8×1,25×45', 'M8x1.25x45'],
    ['M8', 'M8'],
    ['3/8 - 16 x 1 1/2', '3/8-16x1-1/2'],
    ['10-32', '#10-32'],
    ['3/8x1', '3/8x1'],
    ['1/4-18 NPT', '1/4 NPT'],
    ['2-4-1/2', '2-4.5'],
    ['1/4-20x0.3', '1/4-20x0.3'],
  ])('%s becomes %s', (typed, text) => {
    expect(threadText(read(typed))).toBe(text)
  })

  const metric = fc
    .constantFrom(...metricSeries.keys())
    .chain((diameter) =>
      fc.tuple(
        fc.constant(diameter),
        fc.option(fc.constantFrom(...pitchesOf(diameter))),
        fc.option(fc.integer({ min: 10, max: 1000 })),
      ),
    )
    .map(([diameter, pitch, length]) =>
      ['M', diameter, pitch && `x${pitch}`, length && `x${length}`].join(''),
    )

  const inch = fc
    .tuple(
      fc.constantFrom(...unifiedSeries.values()),
      fc.boolean(),
      fc.option(fc.integer({ min: 1, max: 320 })),
    )
    .map(([{ size, coarse, fine }, isFine, eighths]) => {
      const length =
        eighths === null ? '' : `x${Math.floor(eighths / 8)}${eighths % 8 ? `-${eighths % 8}/8` : ''}`
      return `${size}-${(isFine ? fine : coarse) ?? coarse ?? fine}${length.replace('x0-', 'x')}`
    })

  test('every thread of the tables comes back as the same thread', () => {
    fc.assert(
      fc.property(fc.oneof(metric, inch), (typed) => {
        const thread = read(typed)
        expect({ ...read(threadText(thread)), typed }).toEqual({ ...thread, typed })
      }),
      { numRuns: 1000 },
    )
  })
})

describe('the tables of sizes and pitches', () => {
  // ISO 261 and ISO 262, coarse pitch in mm for the sizes of bolts up to M64.
  test.each([
    [1.6, 0.35],
    [2, 0.4],
    [2.5, 0.45],
    [3, 0.5],
    [3.5, 0.6],
    [4, 0.7],
    [5, 0.8],
    [6, 1],
    [7, 1],
    [8, 1.25],
    [10, 1.5],
    [12, 1.75],
    [14, 2],
    [16, 2],
    [18, 2.5],
    [20, 2.5],
    [22, 2.5],
    [24, 3],
    [27, 3],
    [30, 3.5],
    [33, 3.5],
    [36, 4],
    [39, 4],
    [42, 4.5],
    [48, 5],
    [56, 5.5],
    [64, 6],
  ])('ISO 261: M%d has the coarse pitch %d', (diameter, pitch) => {
    expect(read(`M${diameter}`).pitchMm).toBe(pitch)
  })

  // ISO 262, table 2: fine pitches of the sizes selected for bolts, screws and nuts.
  test.each([
    'M8x1',
    'M10x1',
    'M10x1.25',
    'M12x1.25',
    'M12x1.5',
    'M14x1.5',
    'M16x1.5',
    'M20x1.5',
    'M20x2',
    'M24x2',
    'M30x2',
    'M36x3',
  ])('ISO 262: %s is a pitch and no length', (typed) => {
    expect(read(typed)).not.toHaveProperty('lengthMm')
    expect(pitchesOf(read(typed).diameterMm)).toContain(read(typed).pitchMm)
  })

  // ASME B1.1, threads per inch of the coarse and the fine series.
  test.each([
    ['#10', 24, 32],
    ['1/4', 20, 28],
    ['5/16', 18, 24],
    ['3/8', 16, 24],
    ['7/16', 14, 20],
    ['1/2', 13, 20],
    ['9/16', 12, 18],
    ['5/8', 11, 18],
    ['3/4', 10, 16],
    ['7/8', 9, 14],
    ['1', 8, 12],
  ])('ASME B1.1: %s has %d threads per inch in UNC, %d in UNF', (size, coarse, fine) => {
    expect(unifiedSeries.get(size)).toMatchObject({ coarse, fine })
    expect(threadsPerInch(read(`${size} UNC`))).toBe(coarse)
    expect(threadsPerInch(read(`${size} UNF`))).toBe(fine)
  })

  test('ASME B1.1: a numbered size is 0.060 in and 0.013 in more for each number', () => {
    for (const { size, diameterInches } of unifiedSeries.values()) {
      if (size.startsWith('#')) expect(diameterInches).toBeCloseTo(0.06 + 0.013 * Number(size.slice(1)), 9)
    }
  })

  // ASME B1.20.1: outside diameter of the pipe in inches, threads per inch.
  test.each([
    ['1/16', 0.3125, 27],
    ['1/8', 0.405, 27],
    ['1/4', 0.54, 18],
    ['3/8', 0.675, 18],
    ['1/2', 0.84, 14],
    ['3/4', 1.05, 14],
    ['1', 1.315, 11.5],
    ['1-1/4', 1.66, 11.5],
    ['1-1/2', 1.9, 11.5],
    ['2', 2.375, 11.5],
  ])('ASME B1.20.1: %s NPT is %d in outside with %d threads per inch', (size, outside, perInch) => {
    const thread = read(`${size} NPT`)
    expect(thread.diameterMm).toBeCloseTo(outside * 25.4, 9)
    expect(threadsPerInch(thread)).toBe(perInch)
    expect(taperPipeSeries.has(size)).toBe(true)
  })

  test('pitches are given coarse first and smaller after smaller, below half the diameter', () => {
    for (const diameter of metricSeries.keys()) {
      const pitches = pitchesOf(diameter)
      expect(pitches).toEqual([...pitches].sort((a, b) => b - a))
      expect(Math.max(...pitches)).toBeLessThan(diameter / 2)
    }
  })
})
