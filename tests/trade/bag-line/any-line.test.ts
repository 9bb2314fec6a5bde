import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type BagLine, type PieceItem, readBagLine } from '../../../src/trade/bag-line/read-bag-line.ts'

const words = fc.constantFrom(
  ...'8 7 of 0 1 two 2.5 -1 x pcs M6 M6x25 M8x1,25x45 M13 8.8 class 10.9 grade 5 3/8-16x1 10-32 1/4 NPT hex 10 mm socket T30 E4 E10 slot 12pt'.split(
    ' ',
  ),
  ...'@1..3,5 @4 I1..I4 A1,A2 E1-E4 I3 1-8 .. , ; : > @ + ( ) with washers copper missing snapped snapped: missing: lost all new single-use'.split(
    ' ',
  ),
  ...'bolts bolt, cam caps gasket rag hose tank note: mark tools: took min h out in drained coolant 2.1 L qt 10 Nm é 螺丝'.split(
    ' ',
  ),
)
const wordy = fc.array(words, { maxLength: 10 }).map((each) => each.join(' '))
const lines = fc.oneof(
  wordy,
  fc.array(words, { maxLength: 8 }).map((each) => each.join('')),
  fc.string({ unit: 'grapheme', maxLength: 60 }),
  fc.string({ unit: 'binary' }),
)
const options = fc.record({ units: fc.constantFrom('metric' as const, 'us' as const) })

function pieces(reading: BagLine): PieceItem[] {
  if (!reading.understood) return []
  return reading.items.filter((item): item is PieceItem => item.kind === 'fastener' || item.kind === 'part')
}

describe('whatever is typed', () => {
  test('a line has items, or a form near it has', () => {
    fc.assert(
      fc.property(lines, options, (line, units) => {
        const reading = readBagLine(line, units)
        if (reading.understood) expect(reading.items.length).toBeGreaterThan(0)
        else
          expect([reading.nearest, readBagLine(reading.nearest, units).understood]).toEqual([
            reading.nearest,
            true,
          ])
      }),
      { numRuns: 3000 },
    )
  })

  test('what is here and what is missing is what should be', () => {
    fc.assert(
      fc.property(wordy, options, (line, units) => {
        for (const piece of pieces(readBagLine(line, units))) {
          expect(piece.count + piece.missing).toBe(piece.should)
          expect(piece.should).toBeGreaterThan(0)
          expect(piece.broken).toBeLessThanOrEqual(piece.count)
          expect(piece.broken > 0).toBe(piece.brokenHow !== undefined)
          expect(piece.matched).toBe(piece.positions !== undefined)
          if (piece.positions) expect(piece.positions).toHaveLength(piece.should)
          if (piece.alikeAt) expect([piece.should, piece.count]).toContain(piece.alikeAt.length)
          expect(piece.missingAt?.length ?? 0).toBeLessThanOrEqual(piece.missing)
          expect(piece.brokenAt?.length ?? 0).toBeLessThanOrEqual(piece.broken)
          expect(piece.name.trim()).not.toBe('')
        }
      }),
      { numRuns: 3000 },
    )
  })

  test('a name is made of the words of the line, in their order', () => {
    const names = fc.array(
      fc.constantFrom('inner', 'Kupplung', 'cover', 'für', 'left-hand', '螺丝', 'bracket'),
      {
        minLength: 1,
        maxLength: 4,
      },
    )
    fc.assert(
      fc.property(names, fc.integer({ min: 1, max: 9999 }), fc.nat(3), (name, count, at) => {
        const line = [...name.slice(0, at), 'M6x25', ...name.slice(at)].join(' ')
        expect(pieces(readBagLine(`${count} ${line}`, { units: 'metric' }))).toMatchObject([
          { name: name.join(' '), count, thread: { size: 'M6', lengthMm: 25 } },
        ])
      }),
    )
  })

  test('digits and positions of any size agree', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), fc.nat(200), (should, here) => {
        const found = Math.min(should, here)
        const [piece] = pieces(
          readBagLine(`${found} of ${should} cover bolts @1..${should}`, { units: 'metric' }),
        )
        expect(piece).toMatchObject({ count: found, should, missing: should - found })
        expect((piece?.alikeAt ?? piece?.positions)?.length).toBe(should)
      }),
    )
  })
})

describe('long lines', () => {
  // 2000 characters of what a reader could stumble over: each must come to an answer, whatever it is.
  test.each([
    ' ',
    'a',
    '1',
    'M',
    'x',
    '(',
    ')',
    ',',
    ';',
    ':',
    '>',
    '@',
    '-',
    '.',
    '/',
    '"',
    '½',
    '8 ',
    'M6 ',
    'M6x25 ',
    'hex ',
    'hex 10 ',
    '1 missing ',
    '1, ',
    'I1..I4 ',
    'I1,',
    '1-',
    '1 x ',
    '10 ',
    'with ',
    'hose ',
    'hose > ',
    'in ',
    'coolant ',
    '1 L ',
    'a: ',
    '@1 ',
    'E4 ',
    'M6x',
    '1/2-',
    '12 point ',
    '((1 missing) ',
    ' ,',
    'snapped ',
    'took 1 ',
    '8 bolts; ',
    '0 bolts; ',
    '.. ',
    '1..',
    'é',
    '螺',
    '\u{1f527}',
  ])('%j again and again', (piece) => {
    const line = piece.repeat(Math.ceil(2000 / piece.length)).slice(0, 2000)
    const reading = readBagLine(`8 bolts ${line}`, { units: 'metric' })
    expect(reading.understood || readBagLine(reading.nearest, { units: 'metric' }).understood).toBe(true)
    expect(readBagLine(line, { units: 'us' })).toHaveProperty('understood')
  })
})
