import { expect, test } from 'vitest'
import { bareLayout } from '../../src/lines/bare-layout.ts'

test.each([
  ['2x5', 'grid', 10],
  ['grid 2 × 5', 'grid', 10],
  ['circle 12', 'circle', 12],
  ['a circle of 5 studs', 'circle', 5],
  ['row of 6', 'row', 6],
  ['1x6', 'row', 6],
  ['1 2 3 / 8 . 4 / 7 6 5', 'free', 8],
  ['A1 A2 / B1 B2', 'grid', 4],
])('%s', (words, shape, count) => {
  const layout = bareLayout(words)
  expect(layout).toMatchObject({ shape })
  expect(layout?.places).toHaveLength(count)
})

test.each(['head bolts', 'circle', '', 'I3', '12', 'M8x25 bolts'])('%j is no layout', (words) => {
  expect(bareLayout(words)).toBeUndefined()
})

test.each(['circle 0', 'circle 201', 'row 41', '15x15', '41x2', '1 1 / 2', '. / .'])(
  '%j cannot be',
  (words) => {
    expect(bareLayout(words)).toBeNull()
  },
)
