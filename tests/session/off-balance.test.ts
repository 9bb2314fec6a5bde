import { expect, test } from 'vitest'
import { offBalance } from '../../src/session/off-balance.ts'
import { jobWith } from '../ui/support/bench.ts'

const NONE = { inContainers: 0, onBench: 0, onOthers: 0, out: 0, toCome: 0, lost: 0 }

function balanceAfter(...lines: string[]) {
  return offBalance(jobWith(...lines).state())
}

const apart = [
  'begin pump off, does not hide',
  'off water pump into bench',
  'off 4 M6x20 pump bolts into new bag',
  'off 2 clips into new bag',
  'off rag > port',
  'end',
]

test('nothing is off before anything came off', () => {
  expect(balanceAfter()).toEqual(NONE)
})

test('each piece counts where it is, and an aid nowhere', () => {
  expect(balanceAfter(...apart)).toEqual({ ...NONE, inContainers: 6, onBench: 1 })
  expect(balanceAfter(...apart, 'on water pump: 3 studs M6x25')).toEqual({
    ...NONE,
    inContainers: 6,
    onBench: 1,
    onOthers: 3,
  })
  const away = ['out water pump to the machine shop', 'lost 1 clips because it fell into the drain']
  expect(balanceAfter(...apart, ...away)).toEqual({ ...NONE, inContainers: 5, out: 1, lost: 1 })
})

test('what is home is not off', () => {
  const back = ['take out rag', 'take 1', 'fit pump bolts']
  expect(balanceAfter(...apart, ...back)).toEqual({ ...NONE, inContainers: 2, onBench: 1 })
})

test('what was sent back is to come, until another took its place', () => {
  const wrong = [
    ...apart,
    'judge water pump replace because the bearing is loose',
    'buy water pump',
    'arrived o1',
    'compare water pump: connector different',
    'send back o1 because the connector is another one',
  ]
  expect(balanceAfter(...wrong).toCome).toBe(1)
  expect(balanceAfter(...wrong, 'arrived o1').toCome).toBe(0)
})
