import { describe, expect, test } from 'vitest'
import { bitmapOf } from '../../../src/label/render/bitmap.ts'
import { labelSymbol } from '../../../src/label/symbol/label-symbol.ts'
import { inked, pictureOfDots } from '../../support/decode/picture.ts'
import { jsqrCode, zxingSymbols } from '../../support/decode/symbols.ts'
import { codesOf, dotTools, page, smallLabel, tenths } from './drawings.ts'

const tools = await dotTools()

describe.each([203, 300, 600])('dots at %i to the inch', (dpi) => {
  test.each(codesOf(3))('label %s is read by two decoders', async (code) => {
    const dots = Math.round((0.5 * dpi) / 25.4)
    const picture = pictureOfDots(bitmapOf(smallLabel(code, { dpi, dots }), dpi, tools))
    expect(jsqrCode(picture)).toBe(code)
    expect((await zxingSymbols(picture)).map((found) => found.code)).toEqual([code])
  })

  test.each([
    ['anywhere', 3.3333, 4.87],
    ['half way between two dots', (40.5 * 25.4) / dpi, (60.5 * 25.4) / dpi],
  ])('every module of a symbol is its whole number of dots: %s', (_, x, y) => {
    const modules = labelSymbol('000420103', 2)
    const module = (5 * 25.4) / dpi
    const bitmap = bitmapOf(page(40, 40, [{ kind: 'symbol', x, y, module, modules }]), dpi, tools)
    const side = Math.round((40 * dpi) / 25.4)
    expect([bitmap.width, bitmap.height, bitmap.dots.length]).toEqual([side, side, bitmap.rowBytes * side])
    const { left, top } = inked(pictureOfDots(bitmap))
    expect(Math.abs(left - (x * dpi) / 25.4)).toBeLessThan(0.51)
    expect(Math.abs(top - (y * dpi) / 25.4)).toBeLessThan(0.51)
    for (let row = 0; row < side; row++) {
      for (let column = 0; column < side; column++) {
        const byte = bitmap.dots[row * bitmap.rowBytes + (column >> 3)] ?? 0
        const dark = (byte & (0x80 >> (column & 7))) !== 0
        const wanted = modules[Math.floor((row - top) / 5)]?.[Math.floor((column - left) / 5)] ?? false
        if (dark !== wanted) expect.unreachable(`dot ${column}, ${row}`)
      }
    }
  })

  test('lines thinner than a dot are still there, at any place', () => {
    for (let step = 0; step < 20; step++) {
      const at = 5 + step / 61
      const line = { kind: 'line', from: { x: 2, y: at }, to: { x: 18, y: at }, width: 0.02 } as const
      const { left, top, right, bottom } = inked(pictureOfDots(bitmapOf(page(20, 10, [line]), dpi, tools)))
      expect(right - left).toBeGreaterThanOrEqual(Math.floor((16 * dpi) / 25.4))
      expect(bottom - top).toBeGreaterThanOrEqual(1)
      expect(bottom - top).toBeLessThanOrEqual(2)
    }
  })

  test('shapes lie where they are said to lie, to a dot', () => {
    const box = { kind: 'box', x: 10, y: 5, width: 30, height: 20, line: 0, filled: true } as const
    const sides = Object.values(inked(pictureOfDots(bitmapOf(page(60, 40, [box]), dpi, tools))))
    const wanted = [10, 5, 40, 25].map((length) => (length * dpi) / 25.4)
    for (const [n, side] of sides.entries())
      expect(Math.abs(side - (wanted[n] ?? 0))).toBeLessThanOrEqual(0.6)
  })
})

test('small print keeps its letters at 203 dots to the inch', () => {
  const text = { kind: 'text', x: 2, y: 6, size: 1.8, weight: 'plain', text: 'llllllllll' } as const
  const { dots } = bitmapOf(page(20, 10, [text]), 203, tools)
  // Ten separate stems, none of them lost between two dots: one row across the middle of the letters.
  const row = Math.round((5.4 * 203) / 25.4)
  const bits = [...dots.subarray(row * 20, row * 20 + 20)]
    .map((byte) => byte.toString(2).padStart(8, '0'))
    .join('')
  expect(bits.match(/1+/g)).toHaveLength(10)
})

test.each([
  [300, 0.5],
  [203, 0.02],
  [203, 0.4],
])('at %i dots to the inch modules of %d mm are refused', (dpi, module) => {
  const symbol = { kind: 'symbol', x: 5, y: 5, module, modules: labelSymbol('000420103', 1) } as const
  expect(() => bitmapOf(page(30, 30, [symbol]), dpi, tools)).toThrow(RangeError)
})

test('white on black stays open', () => {
  const ground = { kind: 'box', x: 1, y: 1, width: 28, height: 8, line: 0, filled: true } as const
  const text = { kind: 'text', x: 3, y: 7, size: 6, weight: 'strong', text: 'STOP', reversed: true } as const
  const count = (dots: Uint8Array) =>
    dots.reduce((sum, byte) => sum + byte.toString(2).replaceAll('0', '').length, 0)
  const whole = count(bitmapOf(page(30, 10, [ground]), 203, tools).dots)
  const open = count(bitmapOf(page(30, 10, [ground, text]), 203, tools).dots)
  const letters = count(bitmapOf(page(30, 10, [{ ...text, reversed: false }]), 203, tools).dots)
  expect((whole - open) / letters).toBeGreaterThan(0.7)
  expect(tenths(inked(pictureOfDots(bitmapOf(page(30, 10, [ground]), 254, tools))), 254)).toEqual([
    1, 1, 29, 9,
  ])
})
