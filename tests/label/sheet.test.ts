import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Drawing } from '../../src/label/drawing.ts'
import { type Placement, placements, sheetPages } from '../../src/label/sheet.ts'
import { shippedStock } from './layout/shipped-stock.ts'

const a4Of24 = shippedStock('a4-24')
const letterOf30 = shippedStock('letter-30')
const roll = shippedStock('roll-64x34')
const unshifted = { x: 0, y: 0 }

describe('where labels lie', () => {
  // By hand: left 6.5 + 2 x (64 + 2.5) = 139.5; top 12.9 + 7 x 33.9 = 250.2.
  test.each([
    ['the first', a4Of24, 1, 1, { page: 0, x: 6.5, y: 12.9 }],
    ['the second stands beside it', a4Of24, 1, 2, { page: 0, x: 73, y: 12.9 }],
    ['the fourth begins the next row', a4Of24, 1, 4, { page: 0, x: 6.5, y: 46.8 }],
    ['the last of the page', a4Of24, 1, 24, { page: 0, x: 139.5, y: 250.2 }],
    ['the next is on the next page', a4Of24, 1, 25, { page: 1, x: 6.5, y: 12.9 }],
    ['a sheet used up to the 23rd', a4Of24, 24, 1, { page: 0, x: 139.5, y: 250.2 }],
    ['and then a fresh one', a4Of24, 24, 2, { page: 1, x: 6.5, y: 12.9 }],
    ['Letter, third row, second column', letterOf30, 8, 1, { page: 0, x: 74.6, y: 63.5 }],
    ['on a roll each is its own page', roll, 1, 3, { page: 2, x: 0, y: 0 }],
  ])('%s', (_, stock, from, count, place) => {
    const placed = placements(stock, count, { from, shift: unshifted })
    const last = placed.ok ? placed.placements.at(-1) : undefined
    expect(last).toEqual({
      page: place.page,
      x: expect.closeTo(place.x, 6),
      y: expect.closeTo(place.y, 6),
    })
  })

  test('a shift moves every label to the right and down', () => {
    const placed = placements(a4Of24, 30, { from: 5, shift: { x: 1.5, y: -0.8 } })
    const still = placements(a4Of24, 30, { from: 5, shift: unshifted })
    if (!placed.ok || !still.ok) throw new Error('refused')
    for (const [index, { page, x, y }] of placed.placements.entries()) {
      const before = still.placements[index]
      expect(page).toBe(before?.page)
      expect(x - (before?.x ?? 0)).toBeCloseTo(1.5, 6)
      expect(y - (before?.y ?? 0)).toBeCloseTo(-0.8, 6)
    }
  })

  test('no two labels overlap and none leaves the page, wherever one starts', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('a4-8', 'a4-24', 'a4-40', 'a4-65', 'letter-10', 'letter-30', 'roll-57x32'),
        fc.integer({ min: 1, max: 200 }),
        fc.nat(),
        (name, count, start) => {
          const stock = shippedStock(name)
          const from = (start % (stock.columns * stock.rows)) + 1
          const placed = placements(stock, count, { from, shift: unshifted })
          if (!placed.ok) throw new Error('refused')
          expect(placed.placements).toHaveLength(count)
          const { width, height } = stock.label
          const isInside = ({ x, y }: Placement) =>
            x + width < stock.page.width + 1e-6 && y + height < stock.page.height + 1e-6
          expect(placed.placements.filter((place) => !isInside(place))).toEqual([])
          const isApart = (a: Placement, b: Placement) =>
            a.page !== b.page || Math.abs(a.x - b.x) > width - 1e-6 || Math.abs(a.y - b.y) > height - 1e-6
          // Asked once for all pairs: a hundred thousand expectations take seconds.
          const overlapping = placed.placements.flatMap((a, index) =>
            placed.placements.slice(index + 1).flatMap((b) => (isApart(a, b) ? [] : [[a, b]])),
          )
          expect(overlapping).toEqual([])
        },
      ),
      { numRuns: 50 },
    )
  })

  test.each([
    [a4Of24, 0, 24],
    [a4Of24, 25, 24],
    [a4Of24, 1.5, 24],
    [a4Of24, Number.NaN, 24],
    [roll, 2, 1],
  ])('$name has no label %d', (stock, from, most) => {
    const refusal = { code: 'no-such-label', from, most }
    expect(placements(stock, 1, { from, shift: unshifted })).toEqual({ ok: false, refusal })
    expect(sheetPages(stock, [], { from, shift: unshifted })).toEqual({ ok: false, refusal })
  })

  test.each([
    { x: 21, y: 0 },
    { x: 0, y: -21 },
    { x: Number.NaN, y: 0 },
  ])('a shift of $x, $y is no shift', (shift) => {
    const refusal = { code: 'shift-too-far', most: 20 }
    expect(placements(a4Of24, 1, { from: 1, shift })).toEqual({ ok: false, refusal })
  })
})

describe('labels on pages', () => {
  const label: Drawing = {
    width: 64,
    height: 33.9,
    shapes: [
      { kind: 'box', x: 1, y: 2, width: 3, height: 4, line: 0.2 },
      { kind: 'line', from: { x: 0, y: 0 }, to: { x: 64, y: 33.9 }, width: 0.2 },
    ],
  }

  test('three from the last of a sheet come to two pages, each shape moved to its label', () => {
    const sheets = sheetPages(a4Of24, [label, label, label], { from: 24, shift: { x: 0.5, y: 0 } })
    if (!sheets.ok) throw new Error('refused')
    expect(sheets.pages.map((page) => [page.width, page.height, page.shapes.length])).toEqual([
      [210, 297, 2],
      [210, 297, 4],
    ])
    expect(sheets.pages[0]?.shapes[0]).toMatchObject({
      x: expect.closeTo(139.5 + 0.5 + 1, 6),
      y: expect.closeTo(250.2 + 2, 6),
    })
    expect(sheets.pages[1]?.shapes[3]).toMatchObject({
      from: { x: expect.closeTo(73.5, 6), y: expect.closeTo(12.9, 6) },
      to: { x: expect.closeTo(137.5, 6), y: expect.closeTo(46.8, 6) },
    })
  })

  test('no labels, no pages', () => {
    expect(sheetPages(a4Of24, [], { from: 1, shift: unshifted })).toEqual({ ok: true, pages: [] })
  })
})
