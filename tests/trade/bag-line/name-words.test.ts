import { expect, test } from 'vitest'
import { inSingular, wordsOf } from '../../../src/trade/bag-line/name-words.ts'

test('a name in the singular is the same for one and for several', () => {
  expect(inSingular('Cam caps')).toBe('cam cap')
  expect(inSingular('cam cap')).toBe('cam cap')
  expect(inSingular('M6x25 hex bolts')).toBe('m6x25 hex bolt')
})

test('the words of a text come without its stops and without empty words', () => {
  expect(wordsOf('cylinder head / intake cam caps: I3, E1')).toEqual([
    'cylinder',
    'head',
    'intake',
    'cam',
    'cap',
    'i3',
    'e1',
  ])
  expect(wordsOf('bolts of the cover', new Set(['of', 'the']))).toEqual(['bolt', 'cover'])
  expect(wordsOf(' ')).toEqual([])
})
