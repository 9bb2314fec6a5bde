import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fitColumns } from '../../../src/trade/position-drawing/fit-columns.ts'

const things = fc.uniqueArray(
  fc.record({ x: fc.nat(9), row: fc.nat(4), width: fc.integer({ min: 1, max: 6 }) }),
  {
    minLength: 1,
    maxLength: 25,
    selector: ({ x, row }) => `${x} ${row}`,
  },
)

describe('columns for what stands in rows', () => {
  test('as wished where that is possible', () => {
    const wished = new Map([
      [0, 0],
      [1, 10],
    ])
    expect(
      fitColumns(
        [
          { x: 0, row: 0, width: 4 },
          { x: 1, row: 0, width: 4 },
        ],
        wished,
        20,
      ),
    ).toEqual(wished)
  })

  test('pushed apart to both sides where two wish the same', () => {
    const wished = new Map([
      [0, 10],
      [1, 10],
    ])
    expect(
      fitColumns(
        [
          { x: 0, row: 0, width: 4 },
          { x: 1, row: 0, width: 4 },
        ],
        wished,
        20,
      ),
    ).toEqual(
      new Map([
        [0, 8],
        [1, 12],
      ]),
    )
  })

  test('two in one place fit nowhere', () => {
    const one = { x: 1, row: 1, width: 1 }
    expect(fitColumns([one, one], new Map(), 80)).toBeNull()
  })

  test('none overlaps, all keep their order, within the width', () => {
    const wishes = fc.array(fc.integer({ min: -5, max: 90 }), { minLength: 10, maxLength: 10 })
    fc.assert(
      fc.property(things, wishes, fc.integer({ min: 1, max: 80 }), (all, wish, width) => {
        const columns = fitColumns(all, new Map(wish.map((column, x) => [x, column])), width)
        if (!columns) return
        const at = (x: number) => columns.get(x) ?? Number.NaN
        for (const a of all) {
          expect(at(a.x)).toBeGreaterThanOrEqual(0)
          expect(at(a.x) + a.width).toBeLessThanOrEqual(width)
          for (const b of all) {
            if (a.x < b.x) expect(at(a.x)).toBeLessThan(at(b.x))
            if (a.x < b.x && a.row === b.row) expect(at(a.x) + a.width).toBeLessThanOrEqual(at(b.x))
          }
        }
      }),
      { numRuns: 500 },
    )
  })

  test('gives up only where a search by hand finds nothing either', () => {
    const few = fc.uniqueArray(
      fc.record({ x: fc.nat(3), row: fc.nat(1), width: fc.integer({ min: 1, max: 3 }) }),
      {
        minLength: 1,
        maxLength: 5,
        selector: ({ x, row }) => `${x} ${row}`,
      },
    )
    fc.assert(
      fc.property(few, fc.integer({ min: 1, max: 7 }), (all, width) => {
        const found = fitColumns(all, new Map(), width)
        expect(found !== null).toBe(isPossible(all, width))
      }),
    )
  })
})

/** Every way to place the x of some things, one after the other. */
function isPossible(all: readonly { x: number; row: number; width: number }[], width: number): boolean {
  const xs = [...new Set(all.map(({ x }) => x))].toSorted((a, b) => a - b)
  const tryFrom = (index: number, columns: number[]): boolean => {
    if (index === xs.length) return all.every((a) => all.every((b) => areApart(a, b)))
    for (let column = (columns.at(-1) ?? -1) + 1; column < width; column += 1)
      if (tryFrom(index + 1, [...columns, column])) return true
    return false

    function areApart(a: (typeof all)[number], b: (typeof all)[number]): boolean {
      const [from, to] = [columns[xs.indexOf(a.x)] ?? 0, columns[xs.indexOf(b.x)] ?? 0]
      if (from + a.width > width) return false
      return a.row !== b.row || a.x >= b.x || from + a.width <= to
    }
  }
  return tryFrom(0, [])
}
