import { expect, test } from 'vitest'
import { blankLabel } from '../../../src/words/label-text/blank-label.ts'
import { endsOfConnection, flagLabels } from '../../../src/words/label-text/flag-labels.ts'
import * as c from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

const hose = (...ends: string[]) =>
  c.matchedOff(ends, 'coolant hoses', { kind: 'connection', into: c.at('bench') })

test('the two flags of a hose name their own port, and each other', () => {
  const { state } = given(c.strip('Hoses'), hose('radiator', 'pump'))
  const ends = endsOfConnection(state, 'p2')
  expect(ends).toEqual(['p1', 'p2'])
  expect(flagLabels(state, ends, '007900112')).toEqual([
    {
      kind: 'flag',
      name: 'flag A of coolant hose',
      code: '007900112',
      end: 'A',
      what: 'coolant hose',
      own: 'radiator',
      others: ['pump'],
      job: '007 blue twin',
    },
    expect.objectContaining({ end: 'B', own: 'pump', others: ['radiator'] }),
  ])
})

test('a piece with three ends has three flags', () => {
  const { state } = given(c.strip('Hoses'), hose('left', 'right', 'tank'))
  const flags = flagLabels(state, endsOfConnection(state, 'p1'), '007900112')
  expect(flags.map(({ end, own, others }) => [end, own, others.join(' ')])).toEqual([
    ['A', 'left', 'right tank'],
    ['B', 'right', 'left tank'],
    ['C', 'tank', 'left right'],
  ])
})

test('a loose connector has one flag and no other end', () => {
  const { state } = given(c.strip('Wires'), hose('head sensor'))
  expect(flagLabels(state, endsOfConnection(state, 'p1'), '007900112')).toMatchObject([
    { end: 'A', own: 'head sensor', others: [] },
  ])
})

test('more ends than the alphabet has letters', () => {
  const { state } = given(c.strip('Harness'), hose(...Array.from({ length: 28 }, (_, n) => `plug ${n + 1}`)))
  const flags = flagLabels(state, endsOfConnection(state, 'p1'), '007900112')
  expect(flags.map(({ end }) => end).slice(24)).toEqual(['Y', 'Z', 'AA', 'AB'])
  expect(new Set(flags.map(({ end }) => end)).size).toBe(28)
})

test('a piece that nobody knows has no flags', () => {
  expect(endsOfConnection(given().state, 'p9')).toEqual([])
})

test('a blank label says its number and its job', () => {
  expect(blankLabel(given().state, 23, '007002369')).toEqual({
    kind: 'blank',
    name: 'label 23',
    code: '007002369',
    job: '007 blue twin',
  })
})
