import fc from 'fast-check'
import stringWidth from 'string-width'
import { describe, expect, test } from 'vitest'
import { stageCells } from '../../../src/trade/position-drawing/cells.ts'
import { drawLayout } from '../../../src/trade/position-drawing/draw-layout.ts'
import type { Cell, DrawnRow } from '../../../src/trade/position-drawing/drawn-cell.ts'
import { onCircle, type PositionLayout } from '../../../src/trade/position-layout/position-layout.ts'
import { readLayout } from '../../../src/trade/position-layout/read-layout.ts'

const numbers = (count: number) => Array.from({ length: count }, (_, index) => `${index + 1}`)

/** A layout as it is typed, with the first seven through a pass and the eighth next. */
function drawn(form: string, names: readonly string[], room = { width: 60, height: 10 }) {
  const read = readLayout(form, names)
  if (!read.understood) throw new Error(JSON.stringify(read.fault))
  const done = new Set(names.slice(0, 7))
  const next = names[7] === undefined ? null : { fastener: names[7], suspect: false }
  const { rows, form: drawnForm } = drawLayout(
    read.value,
    stageCells({ order: names, done, next, faulty: new Set() }),
    room,
  )
  return { form: drawnForm, text: rows.map(textOf) }
}

const textOf = (row: DrawnRow) =>
  row
    .map(({ text }) => text)
    .join('')
    .trimEnd()

describe('positions as text', () => {
  test('two rows of four, the next one in brackets', () => {
    expect(drawn('2x4', numbers(8)).text).toEqual([
      ' 1 ✓     2 ✓     3 ✓     4 ✓',
      '',
      ' 5 ✓     6 ✓     7 ✓    [8 ·]',
    ])
  })

  test('an outline with its gaps', () => {
    expect(drawn('1 2 3 / 8 . 4 / 7 6 5', numbers(8)).text).toEqual([
      ' 1 ✓     2 ✓     3 ✓',
      '',
      '[8 ·]            4 ✓',
      '',
      ' 7 ✓     6 ✓     5 ✓',
    ])
  })

  test('an empty row of an outline stays one', () => {
    expect(drawn('1 2 / . . / 3 4', numbers(4), { width: 40, height: 3 }).text).toEqual([
      ' 1 ✓     2 ✓',
      '',
      ' 3 ✓     4 ✓',
    ])
  })

  test('a circle clockwise from the top, round for characters twice as high as wide', () => {
    expect(drawn('circle', numbers(8)).text).toEqual([
      '       1 ✓',
      '  [8 ·]    2 ✓',
      '',
      ' 7 ✓         3 ✓',
      '',
      '   6 ✓     4 ✓',
      '       5 ✓',
    ])
  })

  test.each([3, 4, 5, 6, 8, 10, 12, 16])('a circle of %i is as wide as it is high', (count) => {
    const { text } = drawn('circle', numbers(count), { width: 160, height: 60 })
    const at = (name: string) => {
      const row = text.findIndex((line) => new RegExp(`\\b${name}\\b`).test(line))
      return { row, column: text[row]?.search(new RegExp(`\\b${name}\\b`)) ?? -1 }
    }
    const places = onCircle(numbers(count)).places.map(({ position, x, y }) => ({ ...at(position), x, y }))
    const [first] = places
    const lowest = places.reduce((low, each) => (each.y > low.y ? each : low))
    const rowsPerRadius = lowest.row / (lowest.y + 1)
    for (const { row, column, x, y } of places) {
      expect(Math.abs(row - (y + 1) * rowsPerRadius)).toBeLessThanOrEqual(1)
      // A row is as high as two columns are wide.
      expect(Math.abs(column - (first?.column ?? 0) - 2 * x * rowsPerRadius)).toBeLessThanOrEqual(2)
    }
  })

  test('where it is narrow the sign stands under the name, and the next one behind >', () => {
    expect(drawn('2x20', numbers(40), { width: 75, height: 10 }).text).toEqual([
      ' 1  2  3  4  5  6  7 >8  9  10 11 12 13 14 15 16 17 18 19 20',
      ' ✓  ✓  ✓  ✓  ✓  ✓  ✓  ·  ·  ·  ·  ·  ·  ·  ·  ·  ·  ·  ·  ·',
      '',
      ' 21 22 23 24 25 26 27 28 29 30 31 32 33 34 35 36 37 38 39 40',
      ' ·  ·  ·  ·  ·  ·  ·  ·  ·  ·  ·  ·  ·  ·  ·  ·  ·  ·  ·  ·',
    ])
  })

  test('a row that is too long goes on, and says so by two dots', () => {
    expect(drawn('row', numbers(40), { width: 75, height: 4 })).toEqual({
      form: 'wrapped',
      text: [
        '    1 ✓   2 ✓   3 ✓   4 ✓   5 ✓   6 ✓   7 ✓  [8 ·]  9 ·   10 ·  11 ·  ..',
        '..  12 ·  13 ·  14 ·  15 ·  16 ·  17 ·  18 ·  19 ·  20 ·  21 ·  22 ·  ..',
        '..  23 ·  24 ·  25 ·  26 ·  27 ·  28 ·  29 ·  30 ·  31 ·  32 ·  33 ·  ..',
        '..  34 ·  35 ·  36 ·  37 ·  38 ·  39 ·  40 ·',
      ],
    })
  })

  test('where not even one fits, there is an end to it', () => {
    for (let width = -10; width < 8; width += 1)
      expect(drawn('row', numbers(40), { width, height: 4 }).text).toBeDefined()
  })

  test.each([
    ['2x20', 'whole'],
    ['5x8', 'whole'],
    ['8x5', 'whole'],
    ['circle', 'whole'],
    ['row', 'wrapped'],
  ])('40 as %s fit beside a large letter on 80 by 24: %s', (form, as) => {
    const drawing = drawn(form, numbers(40), { width: 75, height: 8 })
    expect(drawing.form).toBe(as)
    expect(drawing.text.length).toBeLessThanOrEqual(8)
  })

  test.each(['5x40', '10x20', 'circle'])('200 as %s say what they are: each is there, in order', (form) => {
    const drawing = drawn(form, numbers(200), { width: 80, height: 16 })
    expect(drawing.form).not.toBe('whole')
    const found = drawing.text.join(' ').match(/\d+/g) ?? []
    expect(found.map(Number).toSorted((a, b) => a - b)).toEqual(numbers(200).map(Number))
    if (drawing.form === 'listed') expect(found).toEqual(numbers(200))
  })

  test('nothing to draw is no row', () => {
    expect(drawLayout({ shape: 'row', places: [] }, new Map(), { width: 80, height: 24 }).rows).toEqual([])
  })
})

describe('any layout', () => {
  test('shows each position once, in its place, no wider than there is room', () => {
    fc.assert(
      fc.property(layouts, cellSays, rooms, (layout, says, room) => {
        const { rows, form } = drawLayout(layout, cellsOf(layout, says), room)
        for (const row of rows) expect(stringWidth(textOf(row))).toBeLessThanOrEqual(room.width)
        const found = foundIn(rows)
        expect([...found.keys()].toSorted()).toEqual(layout.places.map(({ position }) => position).toSorted())
        for (const a of layout.places) {
          for (const b of layout.places) {
            const [one, other] = [found.get(a.position), found.get(b.position)]
            if (!one || !other || form === 'listed') continue
            if (a.x === b.x) expect(one.column).toBe(other.column)
            if (form === 'whole' && a.x < b.x) expect(one.column).toBeLessThan(other.column)
            if (form === 'whole' && a.y < b.y) expect(one.row).toBeLessThanOrEqual(other.row)
            if (layout.shape !== 'circle' && a.x === b.x && a.y < b.y) expect(one.row).toBeLessThan(other.row)
            if (form === 'whole' && layout.shape !== 'circle' && a.y === b.y) expect(one.row).toBe(other.row)
            // A part further down is one further to the right.
            if (form === 'wrapped' && a.y === b.y && a.x < b.x)
              expect(one.row * 1000 + one.column).toBeLessThan(other.row * 1000 + other.column)
          }
        }
      }),
      { numRuns: 400 },
    )
  })

  test('says all of each cell, and marks none but the marked one', () => {
    fc.assert(
      fc.property(layouts, cellSays, rooms, (layout, says, room) => {
        const cells = cellsOf(layout, says)
        const { rows } = drawLayout(layout, cells, room)
        const spans = rows.flat().filter(({ position }) => position !== null)
        for (const { position } of layout.places) {
          const own = spans.filter((span) => span.position === position)
          const text = own.map((span) => span.text).join('')
          expect(text.replace(/[\s[\]>]/g, '')).toBe(`${position}${cells.get(position)?.says ?? ''}`)
          expect(/[[>]/.test(text)).toBe(cells.get(position)?.isMarked)
        }
      }),
      { numRuns: 200 },
    )
  })
})

// No cell says a q, so that names are found in the text without knowing how it was made.
const cellSays = fc.array(fc.constantFrom('✓', '·', '?', '!', '←', 'M6x40', '(12)', '', '漢'), {
  minLength: 1,
  maxLength: 9,
})
const rooms = fc.record({ width: fc.integer({ min: 20, max: 160 }), height: fc.integer({ min: 1, max: 60 }) })

const outlines = fc
  .uniqueArray(fc.tuple(fc.nat(14), fc.nat(10)), {
    minLength: 1,
    maxLength: 60,
    selector: ([x, y]) => `${x},${y}`,
  })
  .map(
    (spots): PositionLayout => ({
      shape: 'free',
      places: spots.map(([x, y], index) => ({ position: `q${index + 1}`, x, y })),
    }),
  )
const circles = fc
  .integer({ min: 1, max: 80 })
  .map((count): PositionLayout => onCircle(numbers(count).map((number) => `q${number}`)))
const layouts = fc.oneof(outlines, circles)

function cellsOf({ places }: PositionLayout, says: readonly string[]): Map<string, Cell> {
  return new Map(
    places.map(({ position }, index) => [
      position,
      { says: says[index % says.length] ?? '', isMarked: index === places.length - 1 },
    ]),
  )
}

/** Where each name stands in the text. */
function foundIn(rows: readonly DrawnRow[]): Map<string, { row: number; column: number }> {
  const found = new Map<string, { row: number; column: number }>()
  for (const [row, text] of rows.map(textOf).entries()) {
    for (const match of text.matchAll(/q\d+/g)) {
      expect(found.has(match[0])).toBe(false)
      found.set(match[0], { row, column: stringWidth(text.slice(0, match.index)) })
    }
  }
  return found
}
