import { linearSumAssignment } from 'linear-sum-assignment'
import { munkres } from 'munkres'
import { describe, expect, test } from 'vitest'

/** Assignment problems with their optima: the libraries that the shims rely on, and are tested against, are held to them. */
const published: [source: string, costs: number[][], least: number][] = [
  // From memory of the documentation of scipy.optimize.linear_sum_assignment.
  [
    'scipy',
    [
      [4, 1, 3],
      [2, 0, 5],
      [3, 2, 2],
    ],
    5,
  ],
  // Documentation of the Python library munkres.
  [
    'munkres for Python, 3 x 3',
    [
      [5, 9, 1],
      [10, 3, 2],
      [8, 7, 4],
    ],
    12,
  ],
  // The next two from memory of the tests of the same library.
  [
    'munkres for Python, hundreds',
    [
      [400, 150, 400],
      [400, 450, 600],
      [300, 225, 300],
    ],
    850,
  ],
  [
    'munkres for Python, 3 x 4',
    [
      [400, 150, 400, 1],
      [400, 450, 600, 2],
      [300, 225, 300, 3],
    ],
    452,
  ],
  // Documentation of an assignment library, which gives the least and the most.
  [
    'least of least and most',
    [
      [8, 4, 7],
      [5, 2, 3],
      [9, 4, 8],
    ],
    15,
  ],
  [
    'most of least and most, as costs below zero',
    [
      [-8, -4, -7],
      [-5, -2, -3],
      [-9, -4, -8],
    ],
    -18,
  ],
  // A task of a university course.
  [
    'course task',
    [
      [3, 1, 2],
      [5, 6, 4],
      [7, 8, 9],
    ],
    12,
  ],
  // Heizer and Render, Operations Management, three repair projects and three workers; from memory.
  [
    'repair shop',
    [
      [11, 14, 6],
      [8, 10, 11],
      [9, 12, 7],
    ],
    25,
  ],
  // Documentation of the R package lpSolve, lp.assign.
  [
    'lpSolve',
    [
      [2, 7, 7, 1],
      [7, 7, 2, 9],
      [7, 3, 8, 8],
      [2, 2, 10, 2],
    ],
    8,
  ],
]

describe('published assignment problems', () => {
  test.each(published)('%s: %j costs %d, in big integers too', (_, costs, least) => {
    expect(costAt(costs, munkres(costs))).toBe(least)
    const bigCosts = costs.map((row) => row.map((cost) => BigInt(cost) * 10n ** 30n + 1n))
    expect(costAt(costs, munkres(bigCosts))).toBe(least)
  })

  test.each(published)('%s, by the reference library', (_, costs, least) => {
    const { rowAssignments } = linearSumAssignment(costs, { maximaze: false })
    const pairs = Array.from(rowAssignments, (column, row): [number, number] => [row, column])
    expect(costAt(costs, pairs)).toBe(least)
  })
})

function costAt(costs: readonly (readonly number[])[], pairs: readonly [number, number][]): number {
  expect(new Set(pairs.map(([row]) => row)).size).toBe(costs.length)
  expect(new Set(pairs.map(([, column]) => column)).size).toBe(costs.length)
  return pairs.reduce((sum, [row, column]) => sum + (costs[row]?.[column] ?? Number.NaN), 0)
}
