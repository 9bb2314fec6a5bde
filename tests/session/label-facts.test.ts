import { expect, test } from 'vitest'
import { paperPlan, standingOf } from '../../src/session/label-facts.ts'
import * as c from '../support/commands.ts'
import { sessionWith, tell } from './support/sessions.ts'

const strip = [
  c.strip('Cover', { hides: false }),
  c.off(4, 'bolts'),
  c.off(1, 'cover', { kind: 'part' }),
  c.endStrip,
]

test('pieces stand in the order of fitting, those that are home already last', () => {
  const session = sessionWith(...strip)
  const pieces = () => paperPlan(session).steps[0]?.pieces.map(({ piece }) => piece.id)
  expect(pieces()).toEqual(['p2', 'p1'])
  tell(session, c.begin(1), c.putOn('p2'))
  expect(pieces()).toEqual(['p1', 'p2'])
})

test('the result of a step is the one in force', () => {
  const session = sessionWith(...strip, c.begin(1), c.putOn('p2'), c.putOn('p1', undefined, 4))
  const result = () => paperPlan(session).steps[0]?.result
  expect(result()).toBeNull()
  tell(session, c.done(1, 'dry'))
  expect(result()).toBe('dry')
  tell(session, c.undo)
  expect(result()).toBeNull()
  tell(session, c.done(1))
  expect(result()).toBeNull()
})

test('what stands before the first start is the trial balance', () => {
  expect(standingOf(sessionWith(...strip)).leftovers.map(({ code }) => code)).toEqual([
    'piece-off',
    'piece-off',
    'step-open',
  ])
})
