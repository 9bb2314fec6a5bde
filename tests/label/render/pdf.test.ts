import { runInNewContext } from 'node:vm'
import { describe, expect, test } from 'vitest'
import type { Drawing, Shape } from '../../../src/label/drawing.ts'
import { pdfOf } from '../../../src/label/render/pdf.ts'
import { typeface } from '../../../src/print/fonts.ts'
import { pdfPicture, readPdf } from '../../support/decode/pdf.ts'
import { inked } from '../../support/decode/picture.ts'
import { jsqrCodes, zxingSymbols } from '../../support/decode/symbols.ts'
import { codesOf, fullSheet, page, SHAPES_AND_SIDES, tenths } from './drawings.ts'

const fonts = typeface()
const about = { typeface: fonts, title: 'Labels of job 42', made: new Date('2026-03-14T09:26:53Z') }
const pdfOfShapes = (...shapes: Shape[]) => pdfOf([page(60, 40, shapes)], about)

describe('a full sheet of 65 labels', async () => {
  const codes = codesOf(65)
  const pdf = await pdfOf([fullSheet(codes)], about)

  test.each([150, 200, 300])('is read at %i dots to the inch, every code by two decoders', async (dpi) => {
    const picture = await pdfPicture(pdf, dpi)
    const found = await zxingSymbols(picture)
    expect(found.map(({ code }) => code).sort()).toEqual(codes)
    expect(jsqrCodes(picture, found, (17 * dpi) / 25.4)).toEqual(found.map(({ code }) => code))
  })

  test('holds its words as text, so that a record can be typed in again from it', async () => {
    const { pages } = await readPdf(pdf)
    const texts = pages[0]?.texts.map(({ text }) => text) ?? []
    expect(texts.filter((text) => text === 'valve cover bolts')).toHaveLength(65)
    expect(texts.map((text) => text.replaceAll(/\D/g, '')).filter((digits) => digits !== '')).toEqual(codes)
  })
})

test('the decoder leaves the functions of the language as they were for all that runs beside it', async () => {
  await pdfPicture(await pdfOfShapes(), 72)
  const holders: object[] = [JSON, Array.prototype, Function.prototype]
  const functions = holders
    .flatMap((holder) => Object.values(Object.getOwnPropertyDescriptors(holder)))
    .flatMap(({ value }) => (typeof value === 'function' ? [value] : []))
  expect(functions.length).toBeGreaterThan(40)
  // Asked in a world of its own: what took their place here says of itself that it is native.
  const source: (each: unknown) => string = runInNewContext(
    '(each) => Function.prototype.toString.call(each)',
  )
  expect(functions.filter((each) => !source(each).includes('[native code]'))).toEqual([])
})

describe('text', () => {
  const lines = [
    'Überwurfmutter ½" größer',
    'κεφαλή κυλίνδρου, Άξονας',
    'болт крышки ГБЦ, Ёлка',
    'filter, office, baffle AVATAR',
    '8 × M6x25 → ≤ 10 N·m ⌀ 8 µm',
    'x̄ 1 ¢ "quoted" (brackets) \\ back',
  ]

  test('in any script of the fonts is found again, where it was put and as wide as it was measured', async () => {
    const shapes = lines.map(
      (text, n): Shape => ({
        kind: 'text',
        x: 5,
        y: 5 + 6 * n,
        size: 3,
        weight: n % 2 ? 'strong' : 'plain',
        text,
      }),
    )
    const [first] = (await readPdf(await pdfOfShapes(...shapes))).pages
    for (const [n, text] of lines.entries()) {
      const found = first?.texts.filter(({ y }) => Math.abs(y - (5 + 6 * n)) < 0.5) ?? []
      expect(found.map((each) => each.text).join('')).toBe(text)
      expect(found[0]?.x).toBeCloseTo(5, 3)
      const last = found.at(-1)
      expect((last?.x ?? 0) + (last?.width ?? 0) - 5).toBeCloseTo(
        fonts.widthOf(text, 3, n % 2 ? 'strong' : 'plain'),
        1,
      )
    }
  })

  test('that is white on black is seen', async () => {
    const ground = { kind: 'box', x: 5, y: 5, width: 50, height: 20, line: 0, filled: true } as const
    const text = {
      kind: 'text',
      x: 8,
      y: 20,
      size: 12,
      weight: 'strong',
      text: 'STOP',
      reversed: true,
    } as const
    const light = async (...shapes: Shape[]) => {
      const { rgba } = await pdfPicture(await pdfOfShapes(...shapes), 100)
      return rgba.filter((value, n) => n % 4 === 0 && value > 127).length
    }
    expect((await light(ground, text)) - (await light(ground))).toBeGreaterThan(300)
  })
})

describe('measures', () => {
  test('pages have their own size', async () => {
    const pages: Drawing[] = [page(210, 297, []), page(215.9, 279.4, []), page(38.1, 21.2, [])]
    const read = (await readPdf(await pdfOf(pages, about))).pages
    for (const [n, { width, height }] of pages.entries()) {
      expect(read[n]?.width).toBeCloseTo(width, 4)
      expect(read[n]?.height).toBeCloseTo(height, 4)
    }
  })

  test('shapes lie where they are said to lie, to a tenth of a millimetre', async () => {
    const sides = async (shape: Shape) => tenths(inked(await pdfPicture(await pdfOfShapes(shape), 508)), 508)
    for (const [shape, expected] of SHAPES_AND_SIDES) expect(await sides(shape)).toEqual(expected)
  })

  test('a dashed line is dashed, the next one is not, and a width of nothing draws nothing', async () => {
    const line = { kind: 'line', from: { x: 5, y: 10 }, to: { x: 55, y: 10 }, width: 1 } as const
    const darkIn = async (...shapes: Shape[]) => {
      const { rgba } = await pdfPicture(await pdfOfShapes(...shapes), 254)
      return rgba.filter((value, n) => n % 4 === 0 && value < 128).length
    }
    const whole = await darkIn(line)
    const dashed = await darkIn({ ...line, dashed: true })
    expect(dashed / whole).toBeCloseTo(0.5, 1)
    const below = { ...line, from: { x: 5, y: 20 }, to: { x: 55, y: 20 } }
    expect(await darkIn({ ...line, dashed: true }, below)).toBe(dashed + whole)
    expect(await darkIn({ ...line, width: 0 }, { kind: 'circle', x: 9, y: 9, radius: 3, line: 0 })).toBe(0)
  })

  test('text turns clockwise around where it begins', async () => {
    const text = { kind: 'text', x: 30, y: 20, size: 6, weight: 'strong', text: 'HH' } as const
    const sides = async (turn?: 90 | 180 | 270) =>
      tenths(inked(await pdfPicture(await pdfOfShapes({ ...text, turn }), 508)), 508)
    const [[left, , , bottom], [downLeft], [, leftTop], [, , upRight]] = [
      await sides(),
      await sides(90),
      await sides(180),
      await sides(270),
    ]
    expect(left).toBeGreaterThan(30)
    expect([bottom, downLeft, leftTop, upRight]).toEqual([20, 30, 20, 30])
  })
})

describe('the file', () => {
  test('is the same for the same pages, and says its title without control characters', async () => {
    const sheet = fullSheet(codesOf(3))
    const title = { ...about, title: 'Blue\x1b[31m twin\u202e' }
    expect(Buffer.from(await pdfOf([sheet], title)).equals(await pdfOf([sheet], title))).toBe(true)
    expect((await readPdf(await pdfOf([sheet], title))).title).toBe('Blue twin')
  })

  test('embeds both fonts cut down to what is used, and names no other', async () => {
    const pdf = await pdfOf([fullSheet(codesOf(65))], about)
    const names =
      Buffer.from(pdf)
        .toString('latin1')
        .match(/(?<=\/FontName \/[A-Z]{6}\+)\S+/g) ?? []
    expect(names.sort()).toEqual(['DejaVuSansCondensed', 'DejaVuSansCondensed-Bold'])
    expect(Buffer.from(pdf).toString('latin1')).not.toContain('Helvetica')
    expect(pdf.length).toBeLessThan(120_000)
  })
})
