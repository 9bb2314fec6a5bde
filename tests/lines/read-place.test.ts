import { expect, test } from 'vitest'
import type { Into } from '../../src/journal/command.ts'
import { labelCode } from '../../src/label/code.ts'
import { readPlace } from '../../src/lines/read-place.ts'
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
  ['new bin pump bolts', { kind: 'new', container: 'bin', name: 'pump bolts' }],
  ['new tray 12 slots cam caps', { kind: 'new', container: 'tray', slots: 12, name: 'cam caps' }],
  ['new tray', null],
  ['new tray 300 slots', null],
  ['new crate', null],
  ['0', null],
  [labelCode(8, 3), null],
  ['somewhere', null],
  ['', null],
])('%j', (text, place) => {
  expect(readPlace(text, state)).toEqual(place)
})
