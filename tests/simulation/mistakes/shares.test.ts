import { expect, test } from 'vitest'
import { ALL_MISTAKES } from './all-mistakes.ts'

test('kinds of mistakes are drawn by the shares of the published count; broken-off work comes on top', () => {
  const sums: Record<string, number> = {}
  for (const { group, going, weight } of ALL_MISTAKES)
    if (going !== 'broken off') sums[group] = (sums[group] ?? 0) + weight
  const rounded = Object.fromEntries(Object.entries(sums).map(([group, sum]) => [group, sum.toFixed(6)]))
  expect(rounded).toEqual({
    omission: '56.000000',
    'wrong installation': '30.000000',
    'wrong part': '8.000000',
    other: '6.000000',
  })
})
