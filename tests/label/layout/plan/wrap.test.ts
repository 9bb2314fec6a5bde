import fc from 'fast-check'
import { expect, test } from 'vitest'
import { wrap } from '../../../../src/label/layout/plan/wrap.ts'

/** Every letter one wide. */
const letters = (text: string) => text.length

test.each([
  ['one two three', 7, ['one two', 'three']],
  ['one two three', 100, ['one two three']],
  ['', 7, []],
  ['   ', 7, []],
  // A count stays with its name, an arrow with where it points.
  ['these are 8 × bolts', 12, ['these are', '8 × bolts']],
  ['a nut → step 4', 8, ['a nut', '→ step 4']],
  // Only what is too long for a line is broken within.
  ['a supercalifragilistic b', 8, ['a', 'supercal', 'ifragili', 'stic b']],
  ['abc', 1, ['a', 'b', 'c']],
  // Narrower than a letter: still one letter a line.
  ['abc', 0.5, ['a', 'b', 'c']],
])('%j in %d', (text, width, lines) => {
  expect(wrap(text, width, letters)).toEqual(lines)
})

test('whatever the text, no line is wider and no letter is lost', () => {
  fc.assert(
    fc.property(
      fc.string({ maxLength: 200, unit: 'grapheme' }),
      fc.integer({ min: 30, max: 60 }),
      (text, width) => {
        const lines = wrap(text, width, letters)
        for (const line of lines) expect(line.length).toBeLessThanOrEqual(width)
        expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''))
      },
    ),
  )
})
