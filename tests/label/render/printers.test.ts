import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Bitmap, bitmapOf } from '../../../src/label/render/bitmap.ts'
import { labelRollBytes } from '../../../src/label/render/label-roll.ts'
import { receiptRollBytes } from '../../../src/label/render/receipt-roll.ts'
import { readCaretCommands } from '../../support/decode/caret-commands.ts'
import { readEscapeCommands } from '../../support/decode/escape-commands.ts'
import { pictureOfDots } from '../../support/decode/picture.ts'
import { jsqrCode, zxingSymbols } from '../../support/decode/symbols.ts'
import { codesOf, dotTools, smallLabel } from './drawings.ts'

const tools = await dotTools()
const codes = codesOf(5)

describe.each([
  [203, 4],
  [300, 6],
])('at %i dots to the inch', (dpi, dots) => {
  const bitmaps = codes.map((code) => bitmapOf(smallLabel(code, { dpi, dots }), dpi, tools))

  test('a label roll comes out as it was drawn, and every code is read by two decoders', async () => {
    const printed = readCaretCommands(labelRollBytes(bitmaps, { copies: 3 }))
    expect(printed.map(({ bitmap }) => bitmap)).toEqual(bitmaps)
    expect(printed.map(({ copies }) => copies)).toEqual([3, 3, 3, 3, 3])
    for (const [n, { bitmap }] of printed.entries()) await expectRead(bitmap, codes[n] ?? '')
  })

  test('so does a receipt roll, each label cut off, copies one by one', async () => {
    const pieces = readEscapeCommands(receiptRollBytes(bitmaps, { copies: 2 }))
    expect(pieces).toHaveLength(10)
    for (const [n, piece] of pieces.entries()) {
      const code = codes[Math.floor(n / 2)] ?? ''
      const drawn = bitmaps[Math.floor(n / 2)]
      expect([piece.rowBytes, piece.height]).toEqual([drawn?.rowBytes, drawn?.height])
      await expectRead(piece, code)
    }
  })
})

async function expectRead(bitmap: Bitmap, code: string): Promise<void> {
  expect(jsqrCode(pictureOfDots(bitmap))).toBe(code)
  expect((await zxingSymbols(pictureOfDots(bitmap))).map((found) => found.code)).toEqual([code])
}

describe('any picture at all', () => {
  const anyBitmap = fc
    .record({ rowBytes: fc.integer({ min: 1, max: 6 }), height: fc.integer({ min: 1, max: 300 }) })
    .chain(({ rowBytes, height }) =>
      fc
        // Bytes that mean something to printers come often.
        .array(
          fc.oneof(fc.constantFrom(0x10, 0x04, 0x05, 0x14, 0x1b, 0x1d, 0x5e, 0x7e), fc.nat({ max: 255 })),
          {
            minLength: rowBytes * height,
            maxLength: rowBytes * height,
          },
        )
        .map((dots): Bitmap => ({ width: 8 * rowBytes, height, rowBytes, dots: Uint8Array.from(dots) })),
    )

  test('comes out of a label roll dot for dot', () => {
    fc.assert(
      fc.property(fc.array(anyBitmap, { minLength: 1, maxLength: 3 }), (bitmaps) => {
        expect(readCaretCommands(labelRollBytes(bitmaps)).map(({ bitmap }) => bitmap)).toEqual(bitmaps)
      }),
      { numRuns: 40 },
    )
  })

  test('comes out of a receipt roll, but for the dot that breaks a real-time command', () => {
    fc.assert(
      fc.property(anyBitmap, (bitmap) => {
        const [piece] = readEscapeCommands(receiptRollBytes([bitmap]))
        expect(piece?.dots).toHaveLength(bitmap.dots.length)
        for (const [n, byte] of bitmap.dots.entries()) {
          const broken = byte === 0x10 && [0x04, 0x05, 0x14].includes(bitmap.dots[n + 1] ?? 0)
          // Between two bands a header stands, which breaks it too.
          expect(broken ? [0x10, 0x18] : [byte]).toContain(piece?.dots[n])
        }
      }),
      { numRuns: 60 },
    )
  })
})

test('the bytes of a tiny label, by hand', () => {
  const dots = Uint8Array.of(0b10100000, 0b01000000)
  const bitmap: Bitmap = { width: 3, height: 2, rowBytes: 1, dots }
  expect(Buffer.from(labelRollBytes([bitmap], { copies: 2 })).toString('latin1')).toBe(
    '^XA\n^PW3\n^LL2\n^LH0,0\n^FO0,0^GFA,2,2,1,A040^FS\n^PQ2\n^XZ\n',
  )
  expect(Buffer.from(receiptRollBytes([bitmap])).toString('hex')).toBe(
    '1b401d7630000100' + '0200a0401b64041d564200',
  )
})

describe.each([labelRollBytes, receiptRollBytes])('%o', (bytesOf) => {
  const bitmap: Bitmap = { width: 16, height: 1, rowBytes: 2, dots: Uint8Array.of(0, 0) }

  test('refuses a label that is wider than the printer', () => {
    expect(bytesOf([bitmap], { widest: 16 })).toBeInstanceOf(Uint8Array)
    expect(() => bytesOf([bitmap], { widest: 15 })).toThrow(RangeError)
  })

  test.each([0, -1, 1.5, Number.NaN])('refuses %d copies', (copies) => {
    expect(() => bytesOf([bitmap], { copies })).toThrow(RangeError)
  })
})
