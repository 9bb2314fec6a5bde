import { expect, test } from 'vitest'
import { labelCode } from '../../../src/label/code.ts'
import type { Drawing } from '../../../src/label/drawing.ts'
import { layOut } from '../../../src/label/layout/lay-out.ts'
import { pdfOf } from '../../../src/label/render/pdf.ts'
import { sheetPages } from '../../../src/label/sheet.ts'
import { typeface } from '../../../src/print/fonts.ts'
import { pdfPicture } from '../../support/decode/pdf.ts'
import { cropped, inked } from '../../support/decode/picture.ts'
import { jsqrCodes, zxingSymbols } from '../../support/decode/symbols.ts'
import { bag } from './samples.ts'
import { shippedStock } from './shipped-stock.ts'

const fonts = typeface()
const about = { typeface: fonts, title: 'sheet', made: new Date('2025-11-25T12:00:00Z') }
const unshifted = { x: 0, y: 0 }

// A dot at 300 dpi is 0.085 mm: what lies within one of where it should is within a tenth of a millimetre.
const dpi = 300
const dots = (length: number) => (length * dpi) / 25.4

test.each([
  ['a4-24', unshifted],
  ['a4-65', unshifted],
  ['a4-8', { x: 1.3, y: -0.7 }],
  ['letter-30', unshifted],
])('in the PDF every label of %s lies within 0.1 mm of where its measures say', async (name, shift) => {
  const { label, columns, rows, margin, gap } = shippedStock(name)
  // A solid square of a third of the label's height in its very corner.
  const side = label.height / 3
  const mark: Drawing = {
    ...label,
    shapes: [{ kind: 'box', x: 0, y: 0, width: side, height: side, line: 0, filled: true }],
  }
  const sheets = sheetPages(
    shippedStock(name),
    Array.from({ length: columns * rows }, () => mark),
    { from: 1, shift },
  )
  if (!sheets.ok) throw new Error('refused')
  const picture = await pdfPicture(await pdfOf(sheets.pages, about), dpi)
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const x = dots(margin.left + column * (label.width + gap.x) + shift.x)
      const y = dots(margin.top + row * (label.height + gap.y) + shift.y)
      const [left, top] = [Math.floor(x) - 8, Math.floor(y) - 8]
      const ink = inked(cropped(picture, left, top, Math.ceil(dots(side)) + 20, Math.ceil(dots(side)) + 20))
      for (const [is, should] of [
        [left + ink.left, x],
        [top + ink.top, y],
        [left + ink.right, x + dots(side)],
        [top + ink.bottom, y + dots(side)],
      ] as const) {
        expect(Math.abs(is - should)).toBeLessThan(dots(0.1))
      }
    }
  }
})

test.each([
  ['a4-24', 5, 3],
  ['a4-65', 1, 1],
  ['letter-30', 30, 2],
])(
  'every symbol on a sheet of %s from label %d on is read, and says the code of its label',
  async (name, from, each) => {
    const stock = shippedStock(name)
    const left = stock.columns * stock.rows - from + 1
    const codes = Array.from({ length: left }, (_, n) => labelCode(17, n + 1))
    const labels = codes.map((code) => {
      const laid = layOut({ ...bag, code }, stock.label, { typeface: fonts, dpi: stock.dpi })
      if (!laid.ok) throw new Error(`Refused: ${laid.refusal.code}`)
      return laid.drawing
    })
    const sheets = sheetPages(stock, labels, { from, shift: unshifted })
    if (!sheets.ok) throw new Error('refused')
    expect(sheets.pages).toHaveLength(1)
    const picture = await pdfPicture(await pdfOf(sheets.pages, about), dpi)
    const found = await zxingSymbols(picture)
    expect(found).toHaveLength(left * each)
    const { margin, label, gap, columns } = stock
    for (const { code, x, y } of found) {
      const column = Math.floor((x / dots(1) - margin.left) / (label.width + gap.x))
      const row = Math.floor((y / dots(1) - margin.top) / (label.height + gap.y))
      expect(code).toBe(codes[row * columns + column - from + 1])
    }
    const symbols = Math.ceil(dots(14))
    expect(jsqrCodes(picture, found, symbols)).toEqual(found.map(({ code }) => code))
  },
)
