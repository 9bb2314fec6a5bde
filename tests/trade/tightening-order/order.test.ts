import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { inRows, onCircle, type PositionLayout } from '../../../src/trade/position-layout/position-layout.ts'
import { readLayout } from '../../../src/trade/position-layout/read-layout.ts'
import { inOrder, ORDER_RULES, proposeOrder } from '../../../src/trade/tightening-order/order.ts'

describe('a grid from the middle outwards', () => {
  // The typical drawing of ten head bolts, from memory: the turn written at each bolt. As its mirror image.
  test('2x5 crosswise', () => {
    expect(turnsOf(grid(2, 5), 'crosswise')).toBe(
      '9 5 1 3 7 / 8 4 2 6 10'.split(' / ').map(mirrored).join(' / '),
    )
  })

  test.each([
    // The other usual drawing, from memory.
    [2, 5, 'spiral', '8 4 1 5 9 / 7 3 2 6 10'],
    [2, 4, 'spiral', '6 1 2 7 / 5 4 3 8'],
    [2, 4, 'crosswise', '5 1 3 7 / 8 4 2 6'],
    [3, 3, 'spiral', '6 2 7 / 5 1 3 / 9 4 8'],
    [3, 3, 'crosswise', '6 2 8 / 5 1 4 / 9 3 7'],
    [2, 2, 'crosswise', '1 3 / 4 2'],
    [3, 5, 'spiral', '12 9 2 3 13 / 11 8 1 4 10 / 15 7 6 5 14'],
  ] as const)('%ix%i %s', (rows, columns, rule, turns) => {
    expect(turnsOf(grid(rows, columns), rule)).toBe(turns)
  })

  const grids = fc
    .tuple(fc.integer({ min: 2, max: 40 }), fc.integer({ min: 2, max: 40 }))
    .filter(([rows, columns]) => rows * columns <= 200)
    .map(([rows, columns]) => grid(rows, columns))
  const rules = fc.constantFrom('spiral' as const, 'crosswise' as const)

  test('each once, from ring to ring without a leap back, nearest first, corners last', () => {
    fc.assert(
      fc.property(grids, rules, (layout, rule) => {
        const order = inOrder(layout, rule) ?? []
        expectEachOnce(layout, order)
        const rings = order.map((position) => ringAt(layout, position))
        for (const [turn, ring] of rings.slice(1).entries())
          expect(ring - (rings[turn] ?? 0)).toBeOneOf([0, 1])
        const distances = layout.places.map(({ position }) => distanceOf(layout, position))
        expect(distanceOf(layout, order[0] ?? '')).toBeCloseTo(Math.min(...distances), 9)
        const farthest = Math.max(...distances)
        expect(order.slice(-4).every((position) => distanceOf(layout, position) === farthest)).toBe(true)
      }),
    )
  })

  test('crosswise, every pair of a ring lies straight across the middle', () => {
    fc.assert(
      fc.property(grids, (layout) => {
        const order = (inOrder(layout, 'crosswise') ?? []).filter(
          (position) => distanceOf(layout, position) > 0,
        )
        for (let turn = 0; turn < order.length; turn += 2) {
          const [one, other] = [placeOf(layout, order[turn]), placeOf(layout, order[turn + 1])]
          const [middleX, middleY] = middleOf(layout)
          expect([one.x + other.x, one.y + other.y]).toEqual([2 * middleX, 2 * middleY])
        }
      }),
    )
  })
})

describe('a row from the middle outwards, from side to side', () => {
  test.each([
    [1, '1'],
    [2, '1 2'],
    [3, '2 1 3'],
    [5, '3 2 4 1 5'],
    [8, '4 5 3 6 2 7 1 8'],
  ])('%i in a row', (count, order) => {
    expect(inOrder(inRows(names(count), 40), 'row')?.join(' ')).toBe(order)
  })

  test('with gaps, the middle of the machine counts and not that of the names', () => {
    const layout = laidOut('1 2 3 . . . 7 8', ['1', '2', '3', '7', '8'])
    expect(inOrder({ ...layout, shape: 'row' }, 'row')).toEqual(['3', '7', '2', '8', '1'])
  })

  test('one row above the other is a row as well', () => {
    const layout: PositionLayout = {
      shape: 'row',
      places: names(4).map((position, y) => ({ position, x: 0, y })),
    }
    expect(inOrder(layout, 'row')).toEqual(['2', '3', '1', '4'])
  })

  test('from side to side, never further in than before', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), (count) => {
        const layout = inRows(names(count), 40)
        const order = inOrder(layout, 'row') ?? []
        expectEachOnce(layout, order)
        const sides = order.map((position) => placeOf(layout, position).x - middleOf(layout)[0])
        for (const [turn, side] of sides.slice(1).entries()) {
          const before = sides[turn] ?? 0
          expect(Math.abs(side)).toBeGreaterThanOrEqual(Math.abs(before))
          expect(side * before).toBeLessThanOrEqual(0)
        }
      }),
    )
  })
})

describe('a circle', () => {
  // ASME PCC-1, legacy cross pattern.
  test('as a star, by the names in the order given clockwise', () => {
    expect(inOrder(onCircle(names(8)), 'star')?.join('-')).toBe('1-5-3-7-2-6-4-8')
    expect(inOrder(onCircle(['A', 'B', 'C', 'D']), 'star')).toEqual(['A', 'C', 'B', 'D'])
  })

  test('clockwise, from the first one named', () => {
    expect(inOrder(onCircle(names(12)), 'clockwise')).toEqual(names(12))
    const { places } = onCircle(names(6))
    const other: PositionLayout = { shape: 'circle', places: places.toReversed() }
    expect(inOrder(other, 'clockwise')).toEqual(['6', '1', '2', '3', '4', '5'])
  })

  test('what is left of a circle keeps its centre', () => {
    const { places } = onCircle(names(8))
    expect(inOrder({ shape: 'circle', places: places.slice(0, 4) }, 'clockwise')).toEqual(names(4))
  })

  test('each once, whatever the count', () => {
    for (let count = 1; count <= 200; count++) {
      const layout = onCircle(names(count))
      expectEachOnce(layout, inOrder(layout, 'star') ?? [])
      expect(inOrder(layout, 'clockwise')).toEqual(names(count))
    }
  })
})

describe('a free outline', () => {
  const cover = laidOut('1 2 3 / 8 . 4 / 7 6 5', names(8))

  test('outwards, always the most opposite one', () => {
    expect(inOrder(cover, 'outwards')).toEqual(['2', '6', '1', '5', '8', '4', '7', '3'])
  })

  test('round and round, from the first one named', () => {
    expect(inOrder(cover, 'clockwise')).toEqual(names(8))
  })

  test('what stands in the middle is first', () => {
    const hub = laidOut('1 2 3 / 8 9 4 / 7 6 5', names(9))
    expect(inOrder({ ...hub, shape: 'free' }, 'star')?.join('-')).toBe('9-1-5-3-7-2-6-4-8')
    expect(inOrder(hub, 'clockwise')).toEqual(['9', ...names(8)])
  })

  test('as a star, like the circle that it nearly is', () => {
    expect(inOrder(cover, 'star')?.join('-')).toBe('1-5-3-7-2-6-4-8')
  })

  // Published head bolt sequences: bolts 1 to 8, then those outside the pattern.
  test('what lies outside the pattern comes last', () => {
    const head = laidOut('. 1 2 3 4 . / 9 . . . . 10 / . 5 6 7 8 .', names(10))
    expect(inOrder(head, 'outwards')?.slice(-2).toSorted()).toEqual(['10', '9'])
  })

  test('each once, and never back by more than one pitch', () => {
    const marks = fc.uniqueArray(fc.tuple(fc.nat(39), fc.nat(39)), {
      minLength: 1,
      maxLength: 200,
      selector: ([x, y]) => `${x},${y}`,
    })
    fc.assert(
      fc.property(marks, (places) => {
        const layout: PositionLayout = {
          shape: 'free',
          places: places.map(([x, y], index) => ({ position: `${index}`, x, y })),
        }
        const order = inOrder(layout, 'outwards') ?? []
        expectEachOnce(layout, order)
        const distances = order.map((position) => distanceOf(layout, position))
        expect(distances[0]).toBeCloseTo(Math.min(...distances), 9)
        for (const [turn, distance] of distances.slice(1).entries()) {
          expect(distance).toBeGreaterThan((distances[turn] ?? 0) - 1.000001)
        }
      }),
    )
  })
})

describe('the usual rule', () => {
  test.each([
    ['row', inRows(names(5), 40), 'row', 'common-practice', []],
    ['grid', grid(2, 5), 'crosswise', 'common-practice', ['spiral', 'clockwise']],
    ['circle of 12', onCircle(names(12)), 'star', 'asme-pcc-1', ['clockwise']],
    ['circle of 20', onCircle(names(20)), 'star', 'after-asme-pcc-1', ['clockwise']],
    ['circle of 5', onCircle(names(5)), 'star', 'common-practice', ['clockwise']],
    ['outline', laidOut('1 . / 2 3', names(3)), 'outwards', 'common-practice', ['clockwise', 'star']],
  ] as const)('%s', (_, layout, rule, source, others) => {
    expect(proposeOrder(layout)).toEqual({ order: inOrder(layout, rule), rule, source, others })
  })

  test('a rule that does not fit the shape gives no order', () => {
    const fitting = (layout: PositionLayout) => ORDER_RULES.filter((rule) => inOrder(layout, rule))
    expect(fitting(inRows(names(5), 40))).toEqual(['row'])
    expect(fitting(grid(2, 3))).toEqual(['spiral', 'crosswise', 'clockwise'])
    expect(fitting(onCircle(names(6)))).toEqual(['star', 'clockwise'])
  })
})

function names(count: number): string[] {
  return Array.from({ length: count }, (_, index) => `${index + 1}`)
}

function grid(rows: number, columns: number): PositionLayout {
  return inRows(names(rows * columns), columns)
}

function laidOut(outline: string, positions: string[]): PositionLayout {
  const reading = readLayout(outline, positions)
  if (!reading.understood) throw new Error(reading.fault.code)
  return reading.value
}

/** The turn written at each place, row by row, as in a manual's drawing. */
function turnsOf(layout: PositionLayout, rule: 'spiral' | 'crosswise'): string {
  const order = inOrder(layout, rule) ?? []
  const rows = [...new Set(layout.places.map(({ y }) => y))]
  return rows
    .map((row) =>
      layout.places
        .filter(({ y }) => y === row)
        .map(({ position }) => order.indexOf(position) + 1)
        .join(' '),
    )
    .join(' / ')
}

function mirrored(row: string): string {
  return row.split(' ').toReversed().join(' ')
}

function expectEachOnce(layout: PositionLayout, order: readonly string[]): void {
  expect(order.toSorted()).toEqual(layout.places.map(({ position }) => position).toSorted())
}

function placeOf({ places }: PositionLayout, position: string | undefined): { x: number; y: number } {
  const place = places.find((each) => each.position === position)
  if (!place) throw new Error(`${position} is not there`)
  return place
}

function middleOf({ places }: PositionLayout): [number, number] {
  const halfway = (values: number[]) => (Math.min(...values) + Math.max(...values)) / 2
  return [halfway(places.map(({ x }) => x)), halfway(places.map(({ y }) => y))]
}

function distanceOf(layout: PositionLayout, position: string): number {
  const { x, y } = placeOf(layout, position)
  const [middleX, middleY] = middleOf(layout)
  return Math.hypot(x - middleX, y - middleY)
}

/** How many rings of a grid are further in. */
function ringAt(layout: PositionLayout, position: string): number {
  const { x, y } = placeOf(layout, position)
  const [middleX, middleY] = middleOf(layout)
  return Math.floor(Math.max(Math.abs(x - middleX), Math.abs(y - middleY)))
}
