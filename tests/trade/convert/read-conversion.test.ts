import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readConversion } from '../../../src/trade/convert/read-conversion.ts'

const metric = { units: 'metric' } as const

function inOthers(text: string): Record<string, number> {
  const reading = readConversion(text, metric)
  if (!reading.understood || !('in' in reading.value)) throw new Error(text)
  return Object.fromEntries(reading.value.in.map(({ unit, numbers: [number = 0] }) => [unit.name, number]))
}

function agreements(text: string): boolean[] {
  const reading = readConversion(text, metric)
  if (!reading.understood || !('comparisons' in reading.value)) throw new Error(text)
  return reading.value.comparisons.map(({ agrees }) => agrees)
}

describe('an amount in the other units of its kind', () => {
  // Converted by hand with the factors of NIST SP 811, appendix B.
  test.each([
    ['22 lbf·ft', { N·m: 29.82799, lbf·in: 264, kgf·m: 3.041609, kgf·cm: 304.1609 }],
    ['7 kgf·m', { N·m: 68.64655, lbf·ft: 50.6311, lbf·in: 607.5732, kgf·cm: 700 }],
    ['100 lbf-ft', { N·m: 135.5818, lbf·in: 1200, kgf·m: 13.8255, kgf·cm: 1382.55 }],
    ['0.002 in', { mm: 0.0508, thou: 2, µm: 50.8 }],
    ['9 US qt', { L: 8.517176, 'imp qt': 7.494068, 'US gal': 2.25, 'imp gal': 1.873517, mL: 8517.176 }],
    ['88 °C', { '°F': 190.4 }],
    ['2.2 bar', { kPa: 220, psi: 31.9083, 'kgf/cm²': 2.243376 }],
    ['150 Ncm', { N·m: 1.5, lbf·ft: 1.106343, lbf·in: 13.27612, kgf·m: 0.1529574, kgf·cm: 15.29574 }],
  ])('%s', (text, others) => {
    const shown = inOthers(text)
    expect(Object.keys(shown)).toEqual(Object.keys(others))
    for (const [unit, number] of Object.entries(others)) {
      expect(Math.abs((shown[unit] ?? 0) / number - 1), unit).toBeLessThan(1e-6)
    }
  })

  test.each([
    ['22 lbf·ft in kgf·m', { kgf·m: 3.0416 }],
    ['22 lbf·ft to Nm', { N·m: 29.828 }],
    ['120 in lb in Nm', { N·m: 13.5582 }],
    ['2 in in mm', { mm: 50.8 }],
    ['3 US qt in ml', { mL: 2839.06 }],
    ['0.5 in as cm', { cm: 1.27 }],
    ['195 F in C', { '°C': 90.5556 }],
  ])('%s', (text, others) => {
    const [[unit = '', number = 0] = []] = Object.entries(others)
    const shown = inOthers(text)
    expect(Object.keys(shown)).toEqual([unit])
    expect(Math.abs((shown[unit] ?? 0) / number - 1)).toBeLessThan(1e-5)
  })
})

describe('figures that are said to be the same', () => {
  test.each([
    ['0.10 mm (0.004 in)', [true]],
    ['0.10 mm (0.004 in.)', [true]],
    ['1.0 mm = 0.004 in', [false]],
    ['0.01 mm (0.004 in.)', [false]],
    ['36 Nm (367 kgf·cm, 27 lbf·ft)', [true, true]],
    ['36 Nm (367 kgf·cm; 27 lbf·in)', [true, false]],
    ['40 N·m / 29.5 lbf·ft', [true]],
    ['0,10 mm (0,004 in)', [true]],
    ['12.7 mm (1/2 in)', [true]],
    // TM 5-3805-258-24-2 and TM 5-3825-226-24.
    ['40 ± 4 N·m (30 ± 3 lb-ft)', [true, true]],
    ['30 +/- 3 lb-ft (40 +/- 4 N·m)', [true, true]],
    ['37-43 N·m (27-32 lbf·ft)', [true, true]],
    ['37..43 N·m (27..23 lbf·ft)', [true, false]],
  ])('%s: %j', (text, expected) => expect(agreements(text)).toEqual(expected))
})

describe('not understood', () => {
  test.each([
    ['', 'empty'],
    ['22', 'unit'],
    ['22 lbf·ft in litres', 'kind'],
    ['22 lbf·ft in furlongs', 'unit'],
    ['22 lbf·ft in qt', 'us-or-imperial'],
    ['22 Nm (3 mm)', 'kind'],
    ['22 Nm (16)', 'unit'],
    ['40 ± 4 N·m (27-32 lbf·ft)', 'kind'],
    ['37..43 N·m (30 lbf·ft)', 'kind'],
    ['40 ± 0 N·m', 'not-positive'],
    ['40 ± 4', 'unit'],
    ['0 Nm', 'not-positive'],
    ['10,000 Nm', 'thousands'],
    ['9999 Nm', 'too-large'],
    ['(22 Nm)', 'empty'],
  ])('%j: %s', (text, code) => {
    const reading = readConversion(text, metric)
    expect(reading).toMatchObject({ understood: false, code })
    if (!reading.understood)
      expect(readConversion(reading.nearest, metric).understood, reading.nearest).toBe(true)
  })
})

test('whatever is typed, it is understood or a form near it is', () => {
  const word = fc.constantFrom(
    ...'40 0 -1 1,000 9999 1/2 .5 Nm N·m lbf·ft in lb mm " °C F qt US imp gal bar in to as ± +/- .. - = / ( ) , x'.split(
      ' ',
    ),
  )
  fc.assert(
    fc.property(fc.array(word, { maxLength: 8 }), fc.constantFrom(' ', ''), (words, between) => {
      const text = words.join(between)
      const reading = readConversion(text, metric)
      if (!reading.understood)
        expect([text, reading.nearest, readConversion(reading.nearest, metric).understood]).toEqual([
          text,
          reading.nearest,
          true,
        ])
    }),
    { numRuns: 3000 },
  )
})
