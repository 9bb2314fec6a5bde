import { expect, test } from 'vitest'
import { lackingText } from '../../../src/words/measurements/result-text.ts'

test.each([
  ['limits', undefined, 'no limit was given, so there is no verdict: the manual has it'],
  [
    'span',
    'rear',
    'the gap at rear is over the limit for a span: was it found within one? Write over and the length behind it',
  ],
  [
    'spacing',
    undefined,
    'how far apart are the points of the grid? Write every and the distance behind its rows and columns',
  ],
  ['grid', undefined, 'a grid has two rows or more, of as many readings each'],
  [
    'inches',
    undefined,
    'read as millimetres all of it is out, as inches all of it would be in: was the unit left out?',
  ],
  [
    'second-axis',
    'cylinder 1',
    'out-of-round at cylinder 1 needs two axes at one height, such as top x and top y',
  ],
  ['second-height', undefined, 'taper needs two heights along one axis, such as top x and bottom x'],
  ['journal', 'I1', 'the journal at I1 is missing'],
  ['before', undefined, 'the length before is missing'],
] as const)('%s at %s', (what, at, says) => {
  expect(lackingText({ what, ...(at !== undefined && { at }) })).toBe(says)
})
