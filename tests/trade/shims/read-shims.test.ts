import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readShims, type SaidShims } from '../../../src/trade/shims/read-shims.ts'
import { steps } from './engines.ts'

const nothing: SaidShims = {
  valves: [],
  wanted: [],
  bench: [],
  forSale: [],
  second: 'fewest-touched',
  unit: 'mm',
}
const valve = (position: string, clearance: number, fitted: number | null) => ({
  position,
  clearance,
  fitted,
})
const twoInlets = [valve('I1', 0.14, 2.45), valve('I2', 0.15, 2.4)]

describe('what is said about shims', () => {
  test.each<[string, Partial<SaidShims>]>([
    ['', {}],
    ['I1 0.14 2.45, I2 0.15 2.40', { valves: twoInlets }],
    ['I1 0,14 2,45, I2 0,15 2,40', { valves: twoInlets }],
    ['I1 0,14 2,45,I2 0.15 2,40', { valves: twoInlets }],
    ['I1: 0.14 shim 2.45; I2 = 0.15 mm 2.40 mm', { valves: twoInlets }],
    ['I1 0.14 2.45 I2 0.15mm 2.40mm', { valves: twoInlets }],
    ['1 0.14 2.45, 2 0.15 2.40', { valves: [valve('1', 0.14, 2.45), valve('2', 0.15, 2.4)] }],
    ['I1 0.14, I2 0.15', { valves: [valve('I1', 0.14, null), valve('I2', 0.15, null)] }],
    ['E1 0 2.45', { valves: [valve('E1', 0, 2.45)] }],
    ['wanted 0.13..0.17', { wanted: [{ of: null, least: 0.13, most: 0.17 }] }],
    ['wanted: 0,13 – 0,17', { wanted: [{ of: null, least: 0.13, most: 0.17 }] }],
    ['wanted 0.13 to 0.17 mm', { wanted: [{ of: null, least: 0.13, most: 0.17 }] }],
    ['wanted I 0.15±0.02', { wanted: [{ of: 'I', least: 0.13, most: 0.17 }] }],
    ['wanted I 0.15 +/- 0.02', { wanted: [{ of: 'I', least: 0.13, most: 0.17 }] }],
    [
      'wanted inlet 0.13…0.17, exhaust 0.22...0.28',
      {
        wanted: [
          { of: 'I', least: 0.13, most: 0.17 },
          { of: 'E', least: 0.22, most: 0.28 },
        ],
      },
    ],
    [
      'wanted 1..4 0.13..0.17 5 6 0.22..0.28',
      {
        wanted: [
          { of: '1..4', least: 0.13, most: 0.17 },
          { of: '5', least: 0.22, most: 0.28 },
          { of: '6', least: 0.22, most: 0.28 },
        ],
      },
    ],
    ['wanted I 0.005..0.007 in', { wanted: [{ of: 'I', least: 0.127, most: 0.1778 }], unit: 'in' }],
    ['bench 2.40 2.55', { bench: [2.4, 2.55] }],
    ['bench 2,40 2,55', { bench: [2.4, 2.55] }],
    ['bench 2.40,2.55 and 2 x 2.60', { bench: [2.4, 2.55, 2.6, 2.6] }],
    ['for sale 2.30..3.00 step 0.025', { forSale: steps(2.3, 3, 0.025) }],
    ['for sale 2,30 to 3,00 in steps of 0,05', { forSale: steps(2.3, 3, 0.05) }],
    // 2.500 to 3.300 in steps of 0.050 are 17 sizes, as vehicle service manuals list them.
    ['for sale 2.500-3.300 by 0.050', { forSale: steps(2.5, 3.3, 0.05) }],
    ['for sale 2.40 2.35 2.40', { forSale: [2.35, 2.4] }],
    ['nearest', { second: 'nearest-middle' }],
    [
      'I1 0.14 2.45, I2 0.15 2.40 wanted I 0.13..0.17, E 0.22..0.28, for sale 2.30..2.40 step 0.05; bench 2.55 nearest',
      {
        valves: twoInlets,
        wanted: [
          { of: 'I', least: 0.13, most: 0.17 },
          { of: 'E', least: 0.22, most: 0.28 },
        ],
        forSale: [2.3, 2.35, 2.4],
        bench: [2.55],
        second: 'nearest-middle',
      },
    ],
  ])('%s', (text, said) => {
    expect(readShims(text)).toEqual({ understood: true, value: { ...nothing, ...said } })
  })

  test('the list for sale has the 17 sizes that manuals list', () => {
    const said = readShims('for sale 2.500..3.300 step 0.050')
    expect(said.understood && said.value.forSale.length).toBe(17)
  })

  test.each([
    'I1 0.006 0.0980 in, I2 0.007in 0.1005in wanted 0.005..0.007 in bench 0.099 in for sale 0.090..0.100 step 0.001 in',
    'I1 0.006 0.0980, I2 0.007 0.1005 wanted 0.005..0.007 bench 0.099 for sale 0.090..0.100 step 0.001 in inches',
    'I1 .006 .0980, I2 6 thou .1005 wanted .005-.007 bench .099 for sale .090 to .100 by .001 in inches'.replace(
      '6 thou',
      '7 thou',
    ),
  ])('inches are kept to the ten-thousandth: %s', (text) => {
    const said = readShims(text)
    expect(said).toMatchObject({
      understood: true,
      value: {
        valves: [valve('I1', 0.1524, 2.4892), valve('I2', 0.1778, 2.5527)],
        wanted: [{ of: null, least: 0.127, most: 0.1778 }],
        bench: [2.5146],
        unit: 'in',
      },
    })
    expect(said.understood && said.value.forSale).toEqual([
      2.286, 2.3114, 2.3368, 2.3622, 2.3876, 2.413, 2.4384, 2.4638, 2.4892, 2.5146, 2.54,
    ])
  })
})

describe('what is etched on a shim', () => {
  test.each([
    ['I1 0.14 245, I2 0.15 2.40', [2.45, 2.4]],
    ['I1 0.14 245, I2 0.15 240 for sale 2.30..3.00 step 0.05', [2.45, 2.4]],
    ['I1 0.14 2475, I2 0.15 2.40', [2.475, 2.4]],
    // The last digit of 2.475 cut off, and rounded.
    ['I1 0.14 247, I2 0.15 248 for sale 2.30..3.00 step 0.025', [2.475, 2.475]],
    ['I1 0.14 247, I2 0.15 248 for sale 2.30..3.00 step 0.01', [2.47, 2.48]],
  ])('%s: %j', (text, sizes) => {
    const said = readShims(text)
    expect(said.understood && said.value.valves.map(({ fitted }) => fitted)).toEqual(sizes)
  })

  test.each([
    ['I1 0.14 245', '245', '2.45'],
    ['I1 0.14 245, I2 0.15 240', '245', '2.45'],
    ['I1 0.14 480, I2 0.15 2.40', '480', '4.80'],
    ['I1 0.14 247, I2 0.15 2.40', '247', '2.47'],
    ['I1 0.14 245 bench 240', '240', '2.40'],
  ])('%s: %s is not certain, perhaps %s', (text, part, nearest) => {
    expect(readShims(text)).toEqual({ understood: false, code: 'code', part, nearest })
  })
})

describe('what is not understood', () => {
  test.each([
    ['I1 0.14 2.45 2.40', 'valve', 'I1 0.14 2.45 2.40', 'I1 0.14 2.45'],
    ['I1', 'valve', 'I1', 'I1 CLEARANCE SHIM'],
    ['tight', 'valve', 'tight', 'tight CLEARANCE SHIM'],
    ['0.14 2.45', 'valve', '0.14 2.45', 'VALVE 0.14 2.45'],
    ['I1 tight 2.45', 'valve', 'I1 tight 2.45', 'I1 2.45 SHIM'],
    ['I1 0.14, 2.45', 'valve', '2.45', 'I1 0.14 2.45'],
    ['I1 -0.02 2.45', 'too-large', '-0.02', 'CLEARANCE'],
    ['I1 0,14,2,45', 'comma', '0,14,2,45', '0.14 2.45'],
    ['bench 2,40,2,55', 'comma', '2,40,2,55', '2.40 2.55'],
    ['I1 0.006 0.098', 'inches', '0.098', '0.098 in'],
    ['I1 2.45 0.14', 'turned-round', 'I1 2.45 0.14', 'I1 0.14 2.45'],
    ['I1 14 2.45', 'too-large', '14', 'CLEARANCE'],
    ['I1 0.14 0.098', 'inches', '0.098', '0.098 in'],
    ['I1 0.14 2.45, i1 0.15 2.40', 'twice', 'i1 0.15 2.40', 'I1 0.14 2.45'],
    ['wanted I 0.13..0.17 I 0.22..0.28', 'twice', 'I 0.22..0.28', 'I 0.13..0.17'],
    ['wanted', 'limit-missing', '', 'LEAST..MOST'],
    ['wanted I', 'limit-missing', 'I', 'I LEAST..MOST'],
    ['wanted I 0.15', 'limit-missing', 'I 0.15', 'I LEAST..MOST'],
    ['wanted I 0.17..0.13', 'limits', '0.17..0.13', '0.13..0.17'],
    ['for sale 2.30..3.00', 'step-missing', '2.30..3.00', '2.30..3.00 step STEP'],
    ['for sale 2.30..3.00 step 0.03', 'step', '2.30..3.00 step 0.03', '2.30..2.99 step 0.03'],
    ['for sale 3.00..2.30 step 0.05', 'limits', '3.00..2.30 step 0.05', '2.30..3.00 step 0.05'],
    ['for sale 2.30..3.00 step 0', 'too-many', '2.30..3.00 step 0', '2.30..3.00 step STEP'],
    ['for sale 2.30..3.00 step x', 'size', '2.30..3.00 step x', 'LEAST..MOST step STEP'],
    ['for sale', 'size', '', 'SIZE'],
    ['bench thin ones', 'size', 'thin', 'SIZE'],
    ['bench 24.5', 'size', '24.5', 'SIZE'],
    ['nearest 2.45', 'size', '2.45', 'nearest'],
  ])('%s: %s', (text, code, part, nearest) => {
    expect(readShims(text)).toEqual({ understood: false, code, part, nearest })
  })

  test('more valves than an engine can have', () => {
    const text = Array.from({ length: 201 }, (_, at) => `V${at + 1} 0.15 2.50`).join(', ')
    expect(readShims(text)).toMatchObject({ understood: false, code: 'too-many', part: 'V201 0.15 2.50' })
  })
})

describe('any line', () => {
  const word = fc.oneof(
    fc.constantFrom('wanted', 'for sale', 'bench', 'nearest', 'in inches', 'step', 'I1', 'E', 'x', '..', ','),
    fc.constantFrom('0.14', '2,45', '245', '0.13..0.17', '0.098 in', '2x2.40', '±', '-', '"', ';'),
    fc.string({ unit: 'grapheme', maxLength: 6 }),
  )
  test('is understood or not, and what is understood is a shim, a clearance and a range', () => {
    fc.assert(
      fc.property(fc.array(word, { maxLength: 14 }), (words) => {
        const said = readShims(words.join(' '))
        if (!said.understood) {
          expect(said.nearest).not.toBe('')
          return
        }
        const { valves, bench, forSale, wanted } = said.value
        const sizes = [...valves.flatMap(({ fitted }) => fitted ?? []), ...bench, ...forSale]
        expect(sizes.every((size) => size >= 0.5 && size <= 20)).toBe(true)
        expect(valves.every(({ clearance }) => clearance >= 0 && clearance <= 1.5)).toBe(true)
        expect(wanted.every(({ least, most }) => least >= 0 && least <= most)).toBe(true)
      }),
      { numRuns: 2000 },
    )
  })

  test('valves come back as they were said, with points or with commas', () => {
    const measured = fc.record({
      clearance: fc.integer({ min: 0, max: 150 }).map((count) => count / 100),
      fitted: fc.integer({ min: 400, max: 700 }).map((count) => count / 200),
    })
    fc.assert(
      fc.property(fc.array(measured, { maxLength: 16 }), fc.boolean(), (valves, hasCommas) => {
        const number = (mm: number) => (hasCommas ? mm.toFixed(3).replace('.', ',') : String(mm))
        const text = valves.map(
          ({ clearance, fitted }, at) => `V${at + 1} ${number(clearance)} ${number(fitted)}`,
        )
        const said = readShims(text.join(', '))
        expect(said.understood && said.value.valves).toEqual(
          valves.map((one, at) => ({ position: `V${at + 1}`, ...one })),
        )
      }),
    )
  })
})
