import { expect, test } from 'vitest'
import { characterName, millimetres, sizeText } from '../../src/words/measures.ts'

test('lengths are told to a tenth of a millimetre', () => {
  expect(millimetres(33.94)).toBe('33.9 mm')
  expect(millimetres(64)).toBe('64 mm')
  expect(sizeText({ width: 63.96, height: 33.9 })).toBe('64 x 33.9 mm')
})

test('a character is shown with its number, or by it alone where it is not seen', () => {
  expect(characterName('§')).toBe("'§' (U+00A7)")
  expect(characterName('🔧')).toBe("'🔧' (U+1F527)")
  expect(characterName('\u200f')).toBe('U+200F')
  expect(characterName('\u00a0')).toBe('U+00A0')
})
