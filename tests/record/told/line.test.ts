import fc from 'fast-check'
import { expect, test } from 'vitest'
import { line, rowsOf } from '../../../src/record/told/line.ts'

test.each([
  ['one two three', 20, ['one two three']],
  ['one two three', 8, ['one two', '  three']],
  ['', 8, ['']],
  ['a\nb\tc\u0007d', 20, ['a b cd']],
  ['abcdefghijklm', 8, ['abcdef', '  ghijkl', '  m']],
  ['um äöüß€ x', 7, ['um', '  äöüß€', '  x']],
])('%j at %i columns', (text, width, rows) => {
  expect(rowsOf([line(text)], width)).toEqual(rows)
})

test('what goes on stands under its own text', () => {
  expect(rowsOf([{ lead: '  12  ', text: 'came off: four bolts', hang: 6 }], 16)).toEqual([
    '  12  came off:',
    '      four bolts',
  ])
})

test('no row is too long, and no character but spaces is lost', () => {
  fc.assert(
    fc.property(
      fc.string({ unit: 'grapheme', maxLength: 200 }),
      fc.integer({ min: 30, max: 100 }),
      (text, width) => {
        const rows = rowsOf([{ lead: '   7  2030-01-01  ', text, hang: 8 }], width)
        for (const row of rows) expect([...row].length).toBeLessThanOrEqual(width)
        const bare = (words: string) => words.replace(/[\s\p{C}]/gu, '')
        expect(bare(rows.join(''))).toBe(bare(`72030-01-01${text}`))
      },
    ),
  )
})
