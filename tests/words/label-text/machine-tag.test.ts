import { expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { Gates } from '../../../src/plan/gates.ts'
import { leftovers } from '../../../src/plan/leftovers.ts'
import { machineTag } from '../../../src/words/label-text/machine-tag.ts'
import * as c from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

/** The tag on the machine after these commands. */
function tag(...commands: Command[]) {
  const { state } = given(...commands)
  return machineTag(state, { leftovers: leftovers(new Gates(state)) }, '25 Nov 2026', '007900078')
}

const bolts = [c.strip('Cover', { hides: false }), c.off(4, 'bolts')]
const back = [c.endStrip, c.begin(1), c.putOn('p1', undefined, 4), c.done(1)]

test('not ready, with every reason, the dangerous ones first', () => {
  const open = tag(
    ...bolts,
    c.drain('coolant'),
    c.drain('oil'),
    c.aidIn('rags', 2),
    c.toolOut('mirror'),
    c.mark('dot up'),
  )
  expect(open).toEqual({
    kind: 'machine',
    name: 'machine tag',
    code: '007900078',
    state: 'NOT READY TO START',
    reasons: [
      '4 pieces off',
      'coolant drained',
      'oil drained',
      '2 rags in it',
      '1 mark not confirmed',
      '1 mirror not back',
      '1 step to do',
    ],
    machine: 'the blue twin, top end',
    job: '007 blue twin',
    date: '25 Nov 2026',
  })
})

test('what is missing is said apart from what is off', () => {
  expect(tag(c.strip('Cover'), c.off(3, 'bolts', { should: 4 })).reasons).toEqual([
    '3 pieces off',
    '1 piece missing',
    '1 step to do',
  ])
})

test('complete but not cleared is not ready', () => {
  expect(tag(...bolts, ...back)).toMatchObject({
    state: 'NOT READY TO START',
    reasons: ['not cleared for the first start'],
  })
})

test('ready once cleared', () => {
  expect(tag(...bolts, ...back, c.clear)).toMatchObject({ state: 'READY TO START', reasons: [] })
})

test('not ready again when it is touched after that', () => {
  expect(tag(...bolts, ...back, c.clear, c.reopen(1)).state).toBe('NOT READY TO START')
})

test('running in while checks are due, then started', () => {
  const later = c.addStep('check retorque', { way: 'after-start', due: 'after 500 km' })
  const running = [...bolts, later, ...back, c.clear, c.firstStart]
  expect(tag(...running)).toMatchObject({
    state: 'RUNNING IN',
    reasons: ['due: check retorque, after 500 km, step 2'],
  })
  expect(tag(...running, c.done(2, 'none moved'))).toMatchObject({ state: 'STARTED', reasons: [] })
})

test('opened again after the start, it is not ready', () => {
  expect(tag(...bolts, ...back, c.clear, c.firstStart, c.reopen(1)).state).toBe('NOT READY TO START')
})
