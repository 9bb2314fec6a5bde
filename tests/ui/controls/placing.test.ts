import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readLayout } from '../../../src/trade/position-layout/read-layout.ts'
import {
  type Direction,
  layoutPlaced,
  moved,
  PLACING_BEGINS,
  type Placing,
  placedHere,
  tookBack,
  underCursor,
} from '../../../src/ui/controls/placing.ts'

/** Moves and placings in one word: `u`, `r`, `d`, `l`, and a name to place it. */
function placed(...steps: string[]): Placing {
  const moves: Record<string, Direction> = { u: 'up', r: 'right', d: 'down', l: 'left' }
  return steps.reduce((placing, step) => {
    const direction = moves[step]
    return direction ? moved(placing, direction) : placedHere(placing, step)
  }, PLACING_BEGINS)
}

describe('placing positions with arrow keys', () => {
  test('a row needs no arrow: the cursor goes on by itself', () => {
    expect(layoutPlaced(placed('1', '2', '3'))).toEqual({
      shape: 'row',
      places: [
        { position: '1', x: 0, y: 0 },
        { position: '2', x: 1, y: 0 },
        { position: '3', x: 2, y: 0 },
      ],
    })
  })

  test('left of the first column and above the first row there is room too', () => {
    expect(layoutPlaced(placed('r', '1', 'l', 'l', 'l', '2', 'u', 'u', '3')).places).toEqual([
      { position: '1', x: 2, y: 2 },
      { position: '2', x: 0, y: 2 },
      { position: '3', x: 1, y: 0 },
    ])
  })

  test('the last one is taken back to under the cursor', () => {
    const placing = tookBack(placed('1', 'd', '2'))
    expect(placing).toEqual({ cursor: { x: 1, y: 1 }, placed: [{ position: '1', x: 0, y: 0 }] })
    expect(underCursor(placing)).toBeNull()
    expect(underCursor(moved(moved(placing, 'up'), 'left'))).toBe('1')
  })

  test('what is typed as an outline can be placed with arrow keys as well', () => {
    const spots = fc.uniqueArray(fc.tuple(fc.nat(6), fc.nat(5)), {
      minLength: 2,
      maxLength: 20,
      selector: ([x, y]) => `${x},${y}`,
    })
    fc.assert(
      fc.property(spots, (all) => {
        const names = all.map((_, index) => `${index + 1}`)
        const grid = Array.from({ length: 6 }, (_, y) =>
          Array.from({ length: 7 }, (_, x) => names[all.findIndex(([a, b]) => a === x && b === y)] ?? '.'),
        )
        const read = readLayout(grid.map((row) => row.join(' ')).join(' / '), names)
        if (!read.understood) throw new Error(JSON.stringify(read))
        let placing = PLACING_BEGINS
        let at = { x: 0, y: 0 }
        for (const [index, [x, y]] of all.entries()) {
          const keys = [...way(x - at.x, 'right', 'left'), ...way(y - at.y, 'down', 'up')]
          placing = placedHere(keys.reduce(moved, placing), names[index] ?? '')
          at = { x: x + 1, y }
        }
        const byName = ({ position: a }: { position: string }, { position: b }: { position: string }) =>
          a.localeCompare(b)
        expect(layoutPlaced(placing).shape).toBe(read.value.shape)
        expect(layoutPlaced(placing).places.toSorted(byName)).toEqual(read.value.places.toSorted(byName))
      }),
    )
  })

  test('never further than forty columns and rows, whatever is pressed', () => {
    const keys = fc.array(fc.constantFrom('u', 'r', 'd', 'l', 'r', 'd', 'name'), { maxLength: 200 })
    fc.assert(
      fc.property(keys, (pressed) => {
        const { cursor, placed: all } = placed(...pressed)
        for (const { x, y } of [cursor, ...all]) {
          expect(Math.min(x, y)).toBeGreaterThanOrEqual(0)
          expect(Math.max(x, y)).toBeLessThan(40)
        }
      }),
    )
  })
})

function way(by: number, forth: Direction, back: Direction): Direction[] {
  return Array<Direction>(Math.abs(by)).fill(by > 0 ? forth : back)
}
