import { expect, test } from 'vitest'
import { arrivedView } from '../../src/session/arrived-view.ts'
import { jobWith } from '../ui/support/bench.ts'

function arrivedIn(...lines: string[]) {
  const { desk } = jobWith(...lines)
  if (!desk.session) throw new Error('no job is open')
  return arrivedView(desk.session, 3)
}

const apart = [
  'begin pump off',
  'off water pump into bench',
  'off 4 M6x20 pump bolts into new bag',
  'off 2 clips into new bag',
  'end',
]

test('nothing arrived where nothing was ordered', () => {
  expect(arrivedIn(...apart)).toEqual([])
})

test('what arrived and what came back, the newest first, until it is on', () => {
  const lines = [
    ...apart,
    'out water pump to the machine shop',
    'buy 2 pump bolts',
    'arrived o1',
    'came back b1',
    'took out b1: nothing',
  ]
  expect(arrivedIn(...lines)).toEqual([
    { piece: 'p1', count: 1 },
    { piece: 'p2', count: 2 },
  ])
  expect(arrivedIn(...lines, 'take 1', 'fit water pump')).toEqual([{ piece: 'p2', count: 2 }])
})

test('an arrival that was taken back did not arrive', () => {
  expect(arrivedIn(...apart, 'buy 2 pump bolts', 'arrived o1', 'undo')).toEqual([])
})
