import fc from 'fast-check'
import { expect, test } from 'vitest'
import { lineView } from '../../../src/ui/controls/line/line-view.ts'
import { textOf, widthOf } from '../../../src/ui/text/line.ts'

test.each([
  ['8 bolts', '', ' > 8 bolts', 10],
  ['8 ', 'bolts', ' > 8 bolts', 5],
  ['漢字', '', ' > 漢字', 7],
  // The sign that makes a symbol a picture is not drawn
  ['\u26a0\ufe0f', '', ' > \u26a0', 4],
  ['a very long line', '', ' > ..ong line', 13],
])('%j|%j', (before, after, row, cursor) => {
  const view = lineView(before, after, 14)
  expect(textOf(view.row)).toBe(row)
  expect(view.cursor).toBe(cursor)
})

test('the cursor is always in sight, and the row never too wide', () => {
  const text = fc.stringMatching(/^[a-z漢é ]{0,40}$/)
  fc.assert(
    fc.property(text, text, fc.integer({ min: 12, max: 40 }), (before, after, width) => {
      const { row, cursor } = lineView(before, after, width)
      expect(cursor).toBeLessThan(width)
      expect(widthOf(row)).toBeLessThanOrEqual(width)
    }),
  )
})
