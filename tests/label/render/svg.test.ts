import { describe, expect, test } from 'vitest'
import type { Shape } from '../../../src/label/drawing.ts'
import { svgOf } from '../../../src/label/render/svg.ts'
import { typeface } from '../../../src/print/fonts.ts'
import { inked } from '../../support/decode/picture.ts'
import { svgPicture } from '../../support/decode/svg.ts'
import { jsqrCode, jsqrCodes, zxingSymbols } from '../../support/decode/symbols.ts'
import { codesOf, fullSheet, page, SHAPES_AND_SIDES, smallLabel, tenths } from './drawings.ts'

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
    for (const [shape, expected] of SHAPES_AND_SIDES) expect(await sides(shape)).toEqual(expected)
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
