import { describe, expect, test } from 'vitest'
import type { Shape } from '../../../src/label/drawing.ts'
import { svgOf } from '../../../src/label/render/svg.ts'
import { typeface } from '../../../src/print/fonts.ts'
import { inked } from '../../support/decode/picture.ts'
import { svgPicture } from '../../support/decode/svg.ts'
import { jsqrCode, jsqrCodes, zxingSymbols } from '../../support/decode/symbols.ts'
import { codesOf, fullSheet, page, smallLabel, tenths } from './drawings.ts'

const fonts = typeface()

describe('an SVG, drawn by Skia', () => {
  test.each(codesOf(4))('label %s is read', async (code) => {
    const picture = await svgPicture(svgOf(smallLabel(code), fonts), 300)
    expect(jsqrCode(picture)).toBe(code)
    expect((await zxingSymbols(picture)).map((found) => found.code)).toEqual([code])
  })

  test('all labels of a full sheet are read', async () => {
    const codes = codesOf(65)
    const picture = await svgPicture(svgOf(fullSheet(codes), fonts), 200)
    const found = await zxingSymbols(picture)
    expect(found.map(({ code }) => code).sort()).toEqual(codes)
    expect(jsqrCodes(picture, found, 150)).toEqual(found.map(({ code }) => code))
  })

  test('shapes lie where they are said to lie', async () => {
    const sides = async (shape: Shape) =>
      tenths(inked(await svgPicture(svgOf(page(60, 40, [shape]), fonts), 508)), 508)
    const box = { kind: 'box', x: 10, y: 5, width: 30, height: 20, line: 1 } as const
    expect(await sides(box)).toEqual([9.5, 4.5, 40.5, 25.5])
    expect(await sides({ ...box, filled: true, corner: 3 })).toEqual([10, 5, 40, 25])
    expect(await sides({ kind: 'circle', x: 20, y: 20, radius: 8, line: 0.4 })).toEqual([
      11.8, 11.8, 28.2, 28.2,
    ])
    const line = { kind: 'line', from: { x: 5, y: 30 }, to: { x: 55, y: 30 }, width: 0.6 } as const
    expect(await sides(line)).toEqual([5, 29.7, 55, 30.3])
    const corners = [
      { x: 3, y: 4 },
      { x: 9, y: 4 },
      { x: 6, y: 10 },
    ]
    expect(await sides({ kind: 'polygon', points: corners })).toEqual([3, 4, 9, 10])
  })

  test('text turns clockwise around where it begins', async () => {
    const text = { kind: 'text', x: 30, y: 30, size: 10, weight: 'strong', text: 'HHH' } as const
    const sides = async (turn?: 90 | 180 | 270) =>
      inked(await svgPicture(svgOf(page(60, 60, [{ ...text, turn }]), fonts), 254))
    // Capitals stand on the baseline; a letter begins a little after where its text begins.
    const [right, down, left, up] = [await sides(), await sides(90), await sides(180), await sides(270)]
    expect([right.bottom, down.left, left.top, up.right]).toEqual([300, 300, 300, 300])
    const lead = right.left - 300
    expect(lead).toBeGreaterThan(0)
    expect([down.top - 300, 300 - left.right, 300 - up.bottom]).toEqual([lead, lead, lead])
  })
})

test('no text of a label stands in the file', () => {
  const svg = svgOf(smallLabel('000420103', { text: '</svg><script>alert(1)</script> & "x"' }), fonts)
  expect(svg.match(/<[a-z/]+/g)).toEqual(['<svg', '<rect', '<path', '<path', '<path', '</svg'])
  expect(svg).not.toMatch(/script|alert|&|<\/svg>./)
})

test('a length of nothing is drawn as nothing', () => {
  const nothing = page(10, 10, [
    { kind: 'line', from: { x: 1, y: 1 }, to: { x: 9, y: 9 }, width: 0 },
    { kind: 'box', x: 1, y: 1, width: 3, height: 3, line: 0 },
    { kind: 'text', x: 1, y: 1, size: 3, weight: 'plain', text: ' ' },
  ])
  expect(svgOf(nothing, fonts)).toBe(svgOf(page(10, 10, []), fonts))
})
