import { expect, test } from 'vitest'
import { lookAlikesInJob } from '../../src/session/look-alikes-in-job.ts'
import { told } from '../lines/told.ts'

const before = ['off 4 5/16-18x1 hex 1/2 pump bracket bolts into bench', 'off 2 M6x20 clamp bolts into bench']

test.each([
  [['off 8 M8x45 hex 13 mount bolts into bench'], [{ size: 'M8', other: '5/16', pieces: ['p1'] }]],
  [['off 2 1/4-20x1 cover screws into bench'], [{ size: '1/4', other: 'M6', pieces: ['p2'] }]],
  [['off 2 3/8-16x1 bolts into bench'], []],
  [['off 1 gasket into bench'], []],
  // Said when the first M8 came; a second lot is no news.
  [['off 8 M8x45 mount bolts into bench', 'off 2 M8x60 long bolts into bench'], []],
  [
    ['off 1 5/16-24x1 long bolt into bench', 'off 8 M8x45 mount bolts into bench'],
    [{ size: 'M8', other: '5/16', pieces: ['p1', 'p3'] }],
  ],
])('%j: %j', (lines, found) => {
  const state = told(...before, ...lines)
  const last = [...state.ledger.accounts.keys()].at(-1)
  expect(lookAlikesInJob(state, last === undefined ? [] : [last])).toEqual(found)
})

test('of what came together, each is looked at after the one before', () => {
  const state = told(...before, 'off 8 M8x45 mount bolts @1..8 into bench')
  const all = [...state.ledger.accounts.keys()]
  expect(lookAlikesInJob(state, all)).toEqual([{ size: 'M8', other: '5/16', pieces: ['p1'] }])
})
