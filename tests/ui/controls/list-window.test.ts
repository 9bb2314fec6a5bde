import fc from 'fast-check'
import { expect, test } from 'vitest'
import { scrolled, windowAt } from '../../../src/ui/controls/list-window.ts'

test.each([
  // length, height, scroll
  [10, 4, 0, { first: 0, count: 4, above: 0, below: 6 }],
  [10, 4, 3, { first: 3, count: 4, above: 3, below: 3 }],
  [10, 4, 99, { first: 6, count: 4, above: 6, below: 0 }],
  [10, 4, -3, { first: 0, count: 4, above: 0, below: 6 }],
  [3, 4, 2, { first: 0, count: 3, above: 0, below: 0 }],
  [0, 4, 0, { first: 0, count: 0, above: 0, below: 0 }],
])('%i rows in %i, scrolled by %i', (length, height, scroll, window) => {
  expect(windowAt(length, height, scroll)).toEqual(window)
})

test('pages down reach the last row, and up the first, with one row in common', () => {
  fc.assert(
    fc.property(fc.nat(300), fc.integer({ min: 2, max: 40 }), (length, height) => {
      const seen = new Set<number>()
      let scroll = 0
      for (let page = 0; page <= length; page += 1) {
        const window = windowAt(length, height, scroll)
        for (let row = window.first; row < window.first + window.count; row += 1) seen.add(row)
        if (window.below === 0) break
        scroll = scrolled(window, { pages: 1 }, length, height)
      }
      expect(seen.size).toBe(length)
    }),
  )
})
