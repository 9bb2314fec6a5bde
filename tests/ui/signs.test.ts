import { expect, test } from 'vitest'
import { SIGNS } from '../../src/ui/signs.ts'

test('without colour no two states look alike', () => {
  const shown = Object.values(SIGNS).map(({ sign, word }) => `${sign} ${word}`)
  expect(new Set(shown).size).toBe(shown.length)
  const words = Object.values(SIGNS).map(({ word }) => word)
  expect(new Set(words).size).toBe(words.length)
})
