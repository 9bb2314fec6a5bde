import { expect, test } from 'vitest'
import { nearestWord } from '../../src/lines/nearest.ts'

const words = ['fit', 'fill', 'find', 'tighten', 'turn', 'turned', 'begin']

test.each([
  ['fot', 'fit'],
  ['ift', 'fit'],
  ['fi', 'fit'],
  ['fitt', 'fit'],
  ['TIGTHEN', 'tighten'],
  ['tighen', 'tighten'],
  ['tihgetn', 'tighten'],
  ['truned', 'turned'],
  ['bgn', null],
  ['', null],
  ['xxxxxxx', null],
])('%s', (typed, meant) => {
  expect(nearestWord(typed, words)).toBe(meant)
})
