import { expect, test } from 'vitest'
import { darkRuns } from '../../../src/label/render/dark-runs.ts'

test('dark modules that lie side by side are one run', () => {
  const [o, x] = [false, true]
  const symbol = [
    [x, x, o, x],
    [o, o, o, o],
    [o, x, x, x],
  ]
  expect(darkRuns(symbol)).toEqual([
    { row: 0, from: 0, to: 2 },
    { row: 0, from: 3, to: 4 },
    { row: 2, from: 1, to: 4 },
  ])
})
