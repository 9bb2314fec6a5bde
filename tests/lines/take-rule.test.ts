import { expect, test } from 'vitest'
import { readLine } from '../../src/lines/read-line.ts'
import { nothing, told, topEnd } from './told.ts'

test.each([
  ['order 2x5 by spiral', 'spiral'],
  ['order 2x5, by the rule Crosswise', 'crosswise'],
  ['order 2x5 by "clockwise"', 'clockwise'],
])('%s', (line, rule) => {
  expect(readLine(line, nothing)).toMatchObject({ kind: 'ask', ask: { sum: { rule } } })
})

test('the rule of a tightening', () => {
  expect(readLine('tighten valve cover bolts: 10 Nm by star', told(...topEnd))).toMatchObject({
    commands: [{ do: 'set-tightening', by: 'star' }],
  })
})

test.each([
  ['order 2x5 by spirale', 'order 2x5 by spiral'],
  ['order 2x5 by cross', 'order 2x5 by crosswise'],
  ['order 2x5 by clock', 'order 2x5 by clockwise'],
  ['order 2x5 by hand', null],
])('%s: perhaps %s', (line, nearest) => {
  expect(readLine(line, nothing)).toMatchObject({
    kind: 'misread',
    misreading: { code: 'not-understood', part: line.split(' ').at(-1), nearest },
  })
})
