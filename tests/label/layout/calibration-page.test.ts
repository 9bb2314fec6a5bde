import { readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Drawing, Shape } from '../../../src/label/drawing.ts'
import { calibrationPage } from '../../../src/label/layout/calibration-page.ts'
import { placements } from '../../../src/label/sheet.ts'
import { labelsOnPage } from '../../../src/label/stock.ts'
import { typeface } from '../../../src/print/fonts.ts'
import { footprints, overlap } from './footprints.ts'
import { shippedStock } from './shipped-stock.ts'

const fonts = typeface()
const unshifted = { x: 0, y: 0 }
const stocks = readdirSync('labels')
  .filter((file) => file.endsWith('.json'))
  .map((file) => file.replace('.json', ''))

describe.each(stocks)('the calibration page of %s', (name) => {
  const stock = shippedStock(name)
  const page = calibrationPage(stock, { typeface: fonts, shift: unshifted })

  test('outlines every label where labels are printed', () => {
    const placed = placements(stock, labelsOnPage(stock), { from: 1, shift: unshifted })
    const boxes = page.shapes.filter((shape) => shape.kind === 'box')
    expect(placed.ok && placed.placements.map(({ x, y }) => ({ x, y }))).toEqual(
      boxes.map(({ x, y }) => ({ x, y })),
    )
    for (const box of boxes) expect(box).toMatchObject(stock.label)
  })

  test('has a tick at every millimetre from both edges, and its number at every ten', () => {
    const upright = ticks(page, 'x')
    for (let at = 1; at < stock.page.width; at++) expect(upright).toContain(at)
    const level = ticks(page, 'y')
    for (let at = 1; at < stock.page.height; at++) expect(level).toContain(at)
    const numbers = textsOf(page).map(({ text }) => text)
    for (let at = 10; at < Math.min(stock.page.width, stock.page.height) - 5; at += 10) {
      expect(numbers.filter((text) => text === String(at))).toHaveLength(2)
    }
  })

  test('crosses the corners of the first and the last label', () => {
    const { left, top } = stock.margin
    const right = left + stock.columns * stock.label.width + (stock.columns - 1) * stock.gap.x
    const bottom = top + stock.rows * stock.label.height + (stock.rows - 1) * stock.gap.y
    expect(crossesAt(page, left, top)).toBe(true)
    expect(crossesAt(page, right, bottom)).toBe(true)
    expect(crossesAt(page, left + 1, top)).toBe(false)
  })

  test('says how to read off the shift, with no text over another', () => {
    const words = textsOf(page)
      .map(({ text }) => text)
      .join(' ')
    expect(words).toContain('Then say: shift X Y')
    const texts = footprints({ ...page, shapes: textsOf(page) }, fonts)
    for (const [n, a] of texts.entries()) {
      for (const b of texts.slice(n + 1)) expect(overlap(a, b) ? [a.shape, b.shape] : 'apart').toBe('apart')
    }
  })
})

test('a shift in use moves the whole page, and is named', () => {
  const stock = shippedStock('a4-24')
  const still = calibrationPage(stock, { typeface: fonts, shift: unshifted })
  const shifted = calibrationPage(stock, { typeface: fonts, shift: { x: 1.5, y: -0.5 } })
  const [first, second] = [still, shifted].map(({ shapes }) => shapes.find((shape) => shape.kind === 'box'))
  expect(second).toMatchObject({
    x: expect.closeTo((first?.x ?? 0) + 1.5, 6),
    y: expect.closeTo((first?.y ?? 0) - 0.5, 6),
  })
  expect(
    textsOf(shifted)
      .map(({ text }) => text)
      .join(' '),
  ).toContain('add to shift 1.5 -0.5')
})

function textsOf({ shapes }: Drawing): (Shape & { kind: 'text' })[] {
  return shapes.filter((shape) => shape.kind === 'text')
}

function ticks({ shapes }: Drawing, axis: 'x' | 'y'): number[] {
  return shapes.flatMap((shape) =>
    shape.kind === 'line' && shape.from[axis] === shape.to[axis] ? [shape.from[axis]] : [],
  )
}

function crossesAt({ shapes }: Drawing, x: number, y: number): boolean {
  const near = (a: number, b: number) => Math.abs(a - b) < 0.001
  const lines = shapes.filter((shape) => shape.kind === 'line')
  const upright = lines.some(({ from, to }) => near(from.x, x) && near(to.x, x) && from.y < y && to.y > y)
  const level = lines.some(({ from, to }) => near(from.y, y) && near(to.y, y) && from.x < x && to.x > x)
  return upright && level
}
