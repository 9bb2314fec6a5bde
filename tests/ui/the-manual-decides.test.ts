import { expect, test } from 'vitest'
import { readLine } from '../../src/lines/read-line.ts'
import { verbs } from '../../src/lines/verbs.ts'
import { jobWith } from './support/bench.ts'

const SUMS = new Set([
  '=',
  'setting',
  'preload',
  'stretch',
  'order',
  'shims',
  'measures',
  'freezes',
  'freezes at',
  'glycol',
  'coolant',
  'teeth',
])
const decides = /the service manual decides/i

/** A job with something of all that is worked out. */
const bench = () =>
  jobWith(
    'begin head off',
    'off 4 M10x80 10.9 hex 17 head bolts into bench',
    'off cam caps I1..I4 into bench',
    'off 4 M6x25 hex 10 valve cover bolts into bench',
    'layout valve cover bolts: 2x2',
    'measure valve clearance I1..I4: 0.14 0.30 0.15 0.15, 0.13..0.17 manual',
    'end',
    'layout head bolts: 2x2',
    'layout cam caps: 1x4',
    'tighten head bolts: 20 Nm, 60 Nm, oiled',
    'wrench t1 handle 400 mm adapter 50 mm range 10..100 Nm',
  )

const sums = verbs.flatMap(({ words, examples }) =>
  SUMS.has(words[0] ?? '') ? examples.map((example) => [example] as const) : [],
)

test.each(sums)('%s: on its screen, and in the line before Enter', (example) => {
  const { type, below, text, enter, state } = bench()
  const reading = readLine(example, state())
  if (reading.kind !== 'ask' || reading.ask.ask !== 'sum')
    throw new Error(`no sum: ${JSON.stringify(reading)}`)
  type(example)
  expect(below()).toMatch(decides)
  enter('')
  expect(text()).toMatch(decides)
})

test('readings as they are typed, when they are recorded, and on the page of their step', () => {
  const { type, below, text, enter, answer } = bench()
  type('measure flatness of head: 0.03 by 0.01 feeler, max 0.05 manual p. 4 in step 1')
  expect(below()).toMatch(decides)
  enter('')
  expect(answer()).toMatch(decides)
  enter('.3', '1')
  expect(text()).toMatch(decides)
})

test('the setting of a wrench beside the bolt that is next, and what is asked about a torque', () => {
  const { enter, text, answer } = jobWith(
    'begin head off',
    'off 4 M10x80 10.9 hex 17 head bolts into bench',
    'end',
    'tighten head bolts: 20 Nm, 60 Nm, oiled',
    'wrench t1 handle 400 mm adapter 50 mm range 10..100 Nm',
    'look 1',
    'fit head bolts',
  )
  enter('.3', '1')
  expect(text().replace(/\s+/g, ' ')).toMatch(
    /set the wrench to 17.8 N·m for 20 N·m.*the (service )?manual decides/,
  )
  enter('tighten head bolts: 200 Nm, oiled')
  expect(answer()).toContain('Look at the unit and the manual')
})
