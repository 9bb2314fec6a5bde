import { expect, test } from 'vitest'
import type { Into } from '../../src/journal/command.ts'
import { labelCode } from '../../src/label/code.ts'
import { readLine } from '../../src/lines/read-line.ts'
import { readPlace } from '../../src/lines/read-place.ts'
import { given } from '../support/journal.ts'
import { told } from './told.ts'

const state = told('bag cam box', 'tray 8 slots')

test.each<[string, Into | null]>([
  ['bag 3', { kind: 'container', no: 3 }],
  ['3', { kind: 'container', no: 3 }],
  ['c3', { kind: 'container', no: 3 }],
  ['into the bag 3', { kind: 'container', no: 3 }],
  ['tray 2/5', { kind: 'container', no: 2, slot: '5' }],
  ['2/5', { kind: 'container', no: 2, slot: '5' }],
  ['tray 2, slot 5', { kind: 'container', no: 2, slot: '5' }],
  [labelCode(7, 3), { kind: 'container', no: 3 }],
  ['Cam Box', { kind: 'container', no: 1 }],
  ['bag cam box', { kind: 'container', no: 1 }],
  ['tray cam box', null],
  ['bench', { kind: 'place', place: 'bench' }],
  ['the Bench', { kind: 'place', place: 'bench' }],
  ['spares', { kind: 'place', place: 'spare' }],
  ['hand', { kind: 'hand' }],
  ['new bag', { kind: 'new', container: 'bag' }],
  ['new', { kind: 'new', container: 'bag' }],
  ['a new one', { kind: 'new', container: 'bag' }],
  ['a new tag', { kind: 'new', container: 'tag' }],
  ['another bag', { kind: 'new', container: 'bag' }],
  ['new bin pump bolts', { kind: 'new', container: 'bin', name: 'pump bolts' }],
  ['new tray 12 slots cam caps', { kind: 'new', container: 'tray', slots: 12, name: 'cam caps' }],
  ['new tray', null],
  ['new tray 300 slots', null],
  ['new crate', null],
  ['the same bag', null],
  ['0', null],
  [labelCode(8, 3), null],
  ['somewhere', null],
  ['', null],
])('%j', (text, place) => {
  expect(readPlace(text, state)).toEqual(place)
})

// Bag 1 and labels 2 to 15, of which 3 is in use.
const sheet = given(
  { do: 'open-container', kind: 'bag', name: 'cam box' },
  { do: 'deal-labels', count: 14 },
  { do: 'open-container', kind: 'bag', no: 3 },
).state

test.each<[string, Into | null]>([
  ['14', { kind: 'container', no: 14 }],
  ['label 14', { kind: 'container', no: 14 }],
  [labelCode(7, 14), { kind: 'container', no: 14 }],
  ['007 0014 61', { kind: 'container', no: 14 }],
  ['tag 14', { kind: 'container', no: 14, as: 'tag' }],
  ['the Bin 14', { kind: 'container', no: 14, as: 'bin' }],
  ['tray 14', { kind: 'container', no: 14, as: 'tray' }],
  ['bag label 14', { kind: 'container', no: 14, as: 'bag' }],
  ['bag 14', { kind: 'container', no: 14, as: 'bag' }],
  ['tag 3', { kind: 'container', no: 3 }],
  ['label 14/2', { kind: 'container', no: 14, slot: '2' }],
  ['new bag 14', { kind: 'new', container: 'bag', no: 14 }],
  ['new bag 99', { kind: 'new', container: 'bag', name: '99' }],
  ['new tag hose label 14', { kind: 'new', container: 'tag', name: 'hose', no: 14 }],
  [
    'new tray 12 slots cam caps label 14',
    { kind: 'new', container: 'tray', slots: 12, name: 'cam caps', no: 14 },
  ],
  ['new tray 12 slots label 007 0014 61', { kind: 'new', container: 'tray', slots: 12, no: 14 }],
  ['new bag label 008 0014 61', null],
  ['new bag label 123456789', null],
])('with labels on paper: %j', (text, place) => {
  expect(readPlace(text, sheet)).toEqual(place)
})

test('a bag line goes onto a label, and the rest of it into what that opened', () => {
  expect(
    readLine('off 4 M6x20 nuts into tag 14; 2 clips into new tray 4 slots label 15', sheet),
  ).toMatchObject({
    kind: 'commands',
    commands: [
      { do: 'take-off', into: { kind: 'container', no: 14, as: 'tag' } },
      { do: 'take-off', into: { kind: 'new', container: 'tray', slots: 4, no: 15 } },
    ],
  })
})

test.each([
  ['bag 14', 'bag label 14'],
  ['bag 3', 'scan 3'],
])('%s is not opened by a bare number, but as %s', (line, nearest) => {
  expect(readLine(line, sheet)).toMatchObject({ kind: 'misread', misreading: { nearest } })
})
