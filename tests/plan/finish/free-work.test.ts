import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { freeWork } from '../../../src/plan/finish/free-work.ts'

/** `3: 1 2` needs 1 and 2. */
const needsOf = (...rows: string[]) =>
  new Map(
    rows.map((row) => {
      const [no, needs = ''] = row.split(':')
      return [Number(no), new Set(needs.split(' ').filter(Boolean).map(Number))] as const
    }),
  )

describe('what can be done meanwhile', () => {
  // The head (3) rests on the liners (4); the cover (1) on the cams (2), and these on the head. The pump (5) on nothing.
  const engine = needsOf('1: 2', '2: 3', '3: 4', '4:', '5:', '6: 1 5')

  test.each<[string, number[], number[], number[]]>([
    ['nothing is held', [], [1, 2, 3], [1, 2, 3]],
    ['the head is away: what lies beneath it and beside it', [3], [1, 2, 3, 4, 5, 6], [4, 5]],
    ['the pump is away: all but the hose that rests on it as well', [5], [1, 2, 3, 4, 5, 6], [1, 2, 3, 4]],
    ['the lowest is away', [4], [6, 5, 4, 3, 2, 1], [5]],
    ['only open steps are named, in their order', [3], [5, 2, 4], [5, 4]],
    ['a held step that the plan does not know', [9], [1, 5], [1, 5]],
    ['all is held', [1, 2, 3, 4, 5, 6], [1, 2, 3, 4, 5, 6], []],
  ])('%s', (_, held, open, free) => {
    expect(freeWork(engine, open, new Set(held))).toEqual(free)
  })

  test('a circle is no trap', () => {
    expect(freeWork(needsOf('1: 2', '2: 1', '3: 2', '4:'), [1, 2, 3, 4], new Set([1]))).toEqual([4])
  })
})

const plans = fc.record({
  needs: fc
    .array(fc.array(fc.nat(8), { maxLength: 2 }), { minLength: 9, maxLength: 9 })
    .map((list) => new Map(list.map((needs, no) => [no, new Set(needs)]))),
  open: fc.uniqueArray(fc.nat(8)),
  held: fc.uniqueArray(fc.nat(8), { maxLength: 2 }).map((list) => new Set(list)),
})

test('beside every way down, tried out', () => {
  let some = 0
  fc.assert(
    fc.property(plans, ({ needs, open, held }) => {
      const rests = (way: number[]): boolean =>
        [...(needs.get(way.at(-1) ?? -1) ?? [])].some(
          (lower) => held.has(lower) || (!way.includes(lower) && rests([...way, lower])),
        )
      const free = open.filter((no) => !held.has(no) && !rests([no]))
      if (free.length > 0 && free.length < open.length) some += 1
      expect(freeWork(needs, open, held)).toEqual(free)
    }),
    { numRuns: 500, seed: 1 },
  )
  expect(some).toBeGreaterThan(100)
})
