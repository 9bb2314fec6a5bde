import fc from 'fast-check'
import { expect, test } from 'vitest'
import { lexicographicCosts } from '../../../src/trade/shims/lexicographic-cost.ts'

const cell = (...criteria: number[]) => ({ criteria })

test('one more of the first costs more than all that the second can come to', () => {
  expect(
    lexicographicCosts([
      [cell(0, 7), cell(1, 0)],
      [cell(0, 9), null],
    ]),
  ).toEqual([
    [7n, 19n],
    [9n, 57n],
  ])
})

test('nothing to choose, no cost', () => {
  expect(lexicographicCosts([])).toEqual([])
  expect(lexicographicCosts([[null]])).toEqual([[1n]])
})

const large = Number.MAX_SAFE_INTEGER
const criterion = fc.oneof(fc.integer({ min: 0, max: 3 }), fc.integer({ min: large - 3, max: large }))
const criteria = fc.array(criterion, { minLength: 3, maxLength: 3 })

test('two choices of one cell a row compare by their costs as by their criteria, however large these are', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(criteria, criteria), { minLength: 1, maxLength: 6 }),
      fc.array(fc.boolean(), { minLength: 6, maxLength: 6 }),
      fc.array(fc.boolean(), { minLength: 6, maxLength: 6 }),
      (rows, one, other) => {
        const costs = lexicographicCosts(rows.map(([left, right]) => [cell(...left), cell(...right), null]))
        const costOf = (chosen: readonly boolean[]) =>
          costs.reduce((sum, row, at) => sum + (row[chosen[at] ? 1 : 0] ?? 0n), 0n)
        const sums = (chosen: readonly boolean[]) =>
          [0, 1, 2].map((at) =>
            rows.reduce((sum, row, no) => sum + BigInt(row[chosen[no] ? 1 : 0][at] ?? 0), 0n),
          )
        expect(sign(costOf(one) - costOf(other))).toBe(compare(sums(one), sums(other)))
        expect(costs[0]?.[2] ?? 0n).toBeGreaterThan(costOf(one))
      },
    ),
  )
})

function compare(one: readonly bigint[], other: readonly bigint[]): number {
  const differences = one.map((sum, at) => sum - (other[at] ?? 0n))
  return sign(differences.find((difference) => difference !== 0n) ?? 0n)
}

function sign(value: bigint): number {
  return value < 0n ? -1 : value > 0n ? 1 : 0
}
