import { expect, test } from 'vitest'
import { nextTurn } from '../../src/plan/tightening.ts'
import { startsAgain } from '../../src/session/pass-again.ts'
import { emptyHome, say, shelfIn } from '../ui/support/bench.ts'

const head = [
  'begin head off',
  'off 4 M8x45 head bolts into bench',
  'end',
  'tighten head bolts: 20 Nm, 40 Nm, 90 deg, oiled',
  'look 1',
  'take 1',
  'fit head bolts',
]

function isAgain(...lines: string[]) {
  const shelf = shelfIn(emptyHome())
  const session = shelf.open(shelf.create({ name: 'blue twin', machine: '', units: 'metric' }))
  say(session, ...head, ...lines)
  const tightening = session.state.tightenings.get('t1')
  const next = tightening && nextTurn(tightening)
  if (!next) throw new Error('no tightening is open')
  return startsAgain(session, 't1', next)
}

test('a pass that nobody began does not start again', () => {
  expect(isAgain()).toBe(false)
  expect(isAgain('turn', 'turn', 'turn', 'turn')).toBe(false)
  expect(isAgain('turn')).toBe(false)
})

test('a torque pass in which work stopped starts again at its first fastener', () => {
  expect(isAgain('turn', 'stop: supper')).toBe(true)
  expect(isAgain('turn', 'stop: supper', 'turn')).toBe(false)
})

test('an angle pass goes on where it stopped', () => {
  const torqued = Array<string>(8).fill('turn')
  expect(isAgain(...torqued, 'turn', 'stop: supper')).toBe(false)
})
