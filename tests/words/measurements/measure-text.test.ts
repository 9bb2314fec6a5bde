import { expect, test } from 'vitest'
import { measureViews } from '../../../src/session/measure-views.ts'
import { workOut } from '../../../src/session/work-out.ts'
import { entryText } from '../../../src/words/entries.ts'
import { measureLine } from '../../../src/words/measurements/measure-text.ts'
import { sumText } from '../../../src/words/sum-text.ts'
import { told } from '../../lines/told.ts'

const lineOf = (...lines: string[]) => {
  const view = measureViews(told('begin head off', ...lines)).at(-1)
  return view && measureLine(view)
}

test.each([
  ['flatness of head: 0.02 0.04 feeler 0.01 max 0.05', 'q1 flatness of head: 0.04 mm, in (max 0.05)'],
  [
    'flatness of head: front 0.02 rear 0.07 feeler 0.01 max 0.05 p. 4',
    'q1 flatness of head: rear 0.07 mm, OUT: 0.02 mm over the limit of 0.05 mm (max 0.05, p. 4)',
  ],
  [
    'flatness of head: 0.05 feeler 0.01 max 0.05',
    'q1 flatness of head: 0.05 mm, too close to call: 0.05 mm to 0.06 mm at a limit of 0.05 mm, it is read as the limit itself (max 0.05)',
  ],
  [
    'width of ring: 2.478 by 0.01 min 2.475',
    'q1 width of ring: 2.478 mm, too close to call: 2.473 mm to 2.483 mm at a limit of 2.475 mm, steps of 0.006 mm decide (min 2.475)',
  ],
  ['bore of cylinder 1: 76.01', 'q1 bore of cylinder 1: 76.01 mm'],
  // TM 5-4320-300-14: plastic strip, max 0.006 in (0.1524 mm).
  [
    'clearance of main 1: 7 thou max 6 thou',
    'q1 clearance of main 1: 0.007 in, OUT: 0.001 in over the limit of 0.006 in (max 6 thou)',
  ],
  [
    'clearance of cap I1: bore 28.03 journal 27.90 by 0.01 max 0.07',
    'q1 clearance of cap I1: 28.03 - 27.90 = 0.13 mm, OUT: 0.06 mm over the limit of 0.07 mm (max 0.07)',
  ],
  [
    'valve clearance I1..I4: 0.12 0.15 0.17 0.14 feeler 0.01 limits 0.13..0.17',
    'q1 valve clearance I1..I4: 1 OUT, 1 too close to call and 2 in; I1 0.12 mm, OUT: 0.01 mm under the limit of 0.13 mm; I3 0.17 mm, too close to call: 0.17 mm to 0.18 mm at a limit of 0.17 mm, it is read as the limit itself (0.13..0.17)',
  ],
  [
    'flatness grid 2x2 of head: 0 0 0 0.1 max 0.02',
    'q1 flatness of head: 0.05 mm from 1/1 down to 1/2, OUT: 0.03 mm over the limit of 0.02 mm (max 0.02)',
  ],
  ['clearance of cap I1: bore 28.03', 'q1 clearance of cap I1: nothing came of it yet'],
])('measure %s', (line, says) => {
  expect(lineOf(`measure ${line}`)).toBe(says)
})

test('inches are told without the sign that marks words to type', () => {
  expect(lineOf('measure flatness of head: 0.002" 0.003" by 0.001" feeler, max 0.004"')).toBe(
    'q1 flatness of head: 0.003 in, in (max 0.004 in)',
  )
})

test('the question shows every result, the limits, and what is lacking', () => {
  const state = told(
    'begin head off',
    'measure bore of cylinder 1: top x 76.01 y 76.04 bottom x 76.00 y 76.01, 76.00..76.03',
  )
  expect(sumText(state, workOut(state, { sum: 'measures', words: null }))).toEqual([
    'q1  bore of cylinder 1: 1 OUT, 3 in and 2 without a limit',
    '    top x 76.01 mm, in',
    '    top y 76.04 mm, OUT: 0.01 mm over the limit of 76.03 mm',
    '    bottom x 76.00 mm, in',
    '    bottom y 76.01 mm, in',
    '    out-of-round top 76.04 - 76.01 = 0.03 mm',
    '    taper axis y 76.04 - 76.01 = 0.03 mm',
    '    limits: 76.00..76.03',
    '    What does the instrument read to? It decides what is too close to call: measure again, with by N or feeler N.',
    'Worked out, not a specification: the service manual decides.',
  ])
})

test.each([
  [null, 'Nothing was measured yet.'],
  ['crank', "Nothing was measured that goes by 'crank'."],
])('nothing measured: %s', (words, says) => {
  const state = told('begin head off')
  expect(sumText(state, workOut(state, { sum: 'measures', words }))).toEqual([says])
})

test('the history tells readings, instrument and limits as they were typed', () => {
  const state = told(
    'begin head off',
    'measure flatness of head: front 2 thou, rear 3 thou over 6 in by 0.5 thou feeler, max 4 thou p. 4',
  )
  const [measure] = state.measures.values()
  if (!measure) throw new Error('nothing measured')
  const entry = { type: 'measured', measure, v: 1, n: 3, id: '', at: '' } as Parameters<typeof entryText>[1]
  expect(entryText(state, entry)).toBe(
    'q1 measured, flatness of head: front 2 thou, rear 3 thou over 152.4 mm; by 0.5 thou feeler; max 4 thou, p. 4',
  )
})
