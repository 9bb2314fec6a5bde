import fc from 'fast-check'
import stringWidth from 'string-width'
import { expect, test } from 'vitest'
import { columnsOf, headOf } from '../../../src/trade/position-drawing/text-columns.ts'

const texts = fc.array(
  fc.oneof(
    fc.constantFrom(...'AZaz09_äßЖλ漢字かなカ한글🄿✓·?!←→↑↓×()[]'),
    fc.integer({ min: 0x20, max: 0x24f }).map((code) => String.fromCodePoint(code)),
  ),
  { maxLength: 20 },
)

test('letters, digits and signs are as wide as a terminal library says', () => {
  fc.assert(
    fc.property(texts, (characters) => {
      const text = characters.filter((character) => /[\p{L}\p{N}\p{S}\p{P} ]/u.test(character)).join('')
      expect(columnsOf(text)).toBe(stringWidth(text))
    }),
  )
})

test('what does not fit ends in two dots', () => {
  expect(headOf('bag 4 slot 12', 20)).toBe('bag 4 slot 12')
  expect(headOf('bag 4 slot 12', 8)).toBe('bag 4 ..')
  fc.assert(
    fc.property(texts, fc.integer({ min: 2, max: 20 }), (characters, most) => {
      expect(columnsOf(headOf(characters.join(''), most))).toBeLessThanOrEqual(most)
    }),
  )
})
