import { expect, test } from 'vitest'
import { lackingText } from '../../../src/words/measurements/result-text.ts'

test.each([
  ['limits', undefined, 'no limit was given, so there is no verdict: the manual has it'],
  [
    'span',
    'rear',
    'the gap at rear is over the limit for a span: does it lie within one? Say over what length it was found: "GAP over LENGTH"',
  ],
  ['spacing', undefined, 'how far apart are the points of the grid? "flatness grid 3x4 every LENGTH"'],
  ['grid', undefined, 'a grid has two rows or more, of as many readings each'],
  [
    'inches',
    undefined,
    'read as millimetres all of it is out, as inches all of it would be in: was the unit left out?',
  ],
  [
    'second-axis',
    'cylinder 1',
    'out-of-round at cylinder 1 needs two axes at one height: "top x READING y READING"',
  ],
  ['second-height', undefined, 'taper needs two heights along one axis: "top x READING bottom x READING"'],
  ['journal', 'I1', 'the journal at I1 is missing: "journal READING"'],
  ['before', undefined, 'the length before is missing: "before READING"'],
] as const)('%s at %s', (what, at, says) => {
  expect(lackingText({ what, ...(at !== undefined && { at }) })).toBe(says)
})
