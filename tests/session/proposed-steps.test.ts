import { expect, test } from 'vitest'
import type { StepKind, StepWay } from '../../src/plan/facts.ts'
import { proposedSteps } from '../../src/session/proposed-steps.ts'
import { addStep, drain, endStrip, off, strip } from '../support/commands.ts'
import { sessionWith, tell } from './support/sessions.ts'

// What is proposed is common practice; the machine's service manual decides.
test('what the record suggests, in the order of the record; what is taken up is proposed no more', () => {
  const session = sessionWith(
    strip('valve cover off'),
    strip('cam chain out'),
    drain('coolant'),
    off(1, 'coolant hose', { kind: 'connection' }),
    endStrip,
  )
  const keys = () => proposedSteps(session).map(({ key }) => key)
  expect(keys()).toEqual(['clean 1', 'level coolant', 'leak', 'turn', 'round'])
  const { title, kind, way, needs, before } = proposedSteps(session)[3] ?? {}
  expect({ title, kind, way, needs, before }).toEqual({
    title: 'Turn the crank two full turns by hand, marks line up',
    kind: 'turn' satisfies StepKind,
    way: 'build' satisfies StepWay,
    needs: [2],
    before: [1],
  })
  tell(session, addStep('check the level: coolant', { way: 'after-start' }))
  expect(keys()).toEqual(['clean 1', 'leak', 'turn', 'round'])
})

test('nothing came off, nothing is proposed', () => {
  expect(proposedSteps(sessionWith())).toEqual([])
})
