import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { plainText } from '../../../src/label/plain-text.ts'
import { bitmapOf } from '../../../src/label/render/bitmap.ts'
import { labelRollBytes } from '../../../src/label/render/label-roll.ts'
import { pdfOf } from '../../../src/label/render/pdf.ts'
import { receiptRollBytes } from '../../../src/label/render/receipt-roll.ts'
import { svgOf } from '../../../src/label/render/svg.ts'
import { drawableText } from '../../../src/label/typeface.ts'
import { readCaretCommands } from '../../support/decode/caret-commands.ts'
import { readEscapeCommands } from '../../support/decode/escape-commands.ts'
import { readPdf } from '../../support/decode/pdf.ts'
import { pictureOfDots } from '../../support/decode/picture.ts'
import { jsqrCode } from '../../support/decode/symbols.ts'
import { dotTools, page, smallLabel } from './drawings.ts'

const tools = await dotTools()
const about = { typeface: tools.typeface, title: 'Labels', made: new Date('2026-03-14T09:26:53Z') }
const code = '000420103'

const hostile = [
  ['commands for a label roll', '^XZ~JA^XA^JUF'],
  ['commands for a receipt roll', '\x1b@\x1dV\x00 cut'],
  ['a real-time command', '\x10\x14\x01\x00\x01 drawer'],
  ['a turned reading order', 'bolt \u202egnp.exe'],
  ['controls', 'a\u0000b\u0007c\u009bd'],
  ['markup', '</svg><script>alert(1)</script>'],
  ['operators of a page', ') Tj ET Q (injected'],
  ['500 characters', 'x'.repeat(500)],
  ['emoji', 'pump 🔧 left 👩‍🔧'],
  ['a script that the fonts lack', '漢字'],
  ['right to left', 'שלום bolt'],
  ['piled marks', `zalgo ${'e\u0301\u0302\u0303\u0304\u0305'.repeat(20)}`],
  ['half a character', '\ud800 lone'],
  ['names of an object', '__proto__ constructor'],
]

describe.each(hostile)('%s', (_, name) => {
  describe.each([
    ['as it is typed', name],
    ['as the journal keeps it', plainText(name)],
  ])('%s', (_, text) => {
    const label = smallLabel(code, { text, dpi: 203, dots: 4 })

    test('is set without what cannot be drawn', () => {
      expect(tools.typeface.missing(drawableText(text, tools.typeface))).toEqual([])
    })

    test('leaves an SVG of nothing but our own shapes', () => {
      const svg = svgOf(label, tools.typeface)
      expect(svg.match(/<[^\s>]*/g)).toEqual(['<svg', '<rect', '<path', '<path', '<path', '</svg>'].map(bare))
      expect(svg).toMatch(/^[\x20-\x7e\n]*$/)
    })

    test('stands in a PDF as text', async () => {
      // A page wide enough for all of it: what lies beyond its edge is not read.
      const { pages } = await readPdf(await pdfOf([{ ...label, width: 1000 }], about))
      expect(pages).toHaveLength(1)
      const words = pages[0]?.texts.map((each) => each.text).join('') ?? ''
      expect(words.replaceAll(' ', '')).toBe(
        `${code}${drawableText(text, tools.typeface)}`.replaceAll(' ', ''),
      )
    })

    test('reaches printers as dots only, and leaves the symbol whole', () => {
      const bitmap = bitmapOf(label, 203, tools)
      const [printed] = readCaretCommands(labelRollBytes([bitmap]))
      expect(printed?.bitmap).toEqual(bitmap)
      const [piece] = readEscapeCommands(receiptRollBytes([bitmap]))
      expect(piece && jsqrCode(pictureOfDots(piece))).toBe(code)
    })
  })
})

test('whatever the text, printers get nothing but our own commands', () => {
  fc.assert(
    fc.property(
      fc.string({ unit: 'binary', maxLength: 60 }),
      fc.integer({ min: 1, max: 30 }),
      (text, size) => {
        const shape = { kind: 'text', x: 1, y: 12, size, weight: 'plain', text } as const
        const bitmap = bitmapOf(page(40, 20, [shape]), 203, tools)
        const roll = Buffer.from(labelRollBytes([bitmap])).toString('latin1')
        expect(roll).toMatch(
          /^\^XA\n\^PW\d+\n\^LL\d+\n\^LH0,0\n\^FO0,0\^GFA,\d+,\d+,\d+,[0-9A-F]+\^FS\n\^PQ\d+\n\^XZ\n$/,
        )
        expect(readEscapeCommands(receiptRollBytes([bitmap]))).toHaveLength(1)
      },
    ),
    { numRuns: 150 },
  )
})

function bare(tag: string): string {
  return tag.replace('>', '')
}
