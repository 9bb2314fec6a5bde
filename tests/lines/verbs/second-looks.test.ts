import { describe, expect, test } from 'vitest'
import { SECOND_LOOK_MINUTES } from '../../../src/lines/critical-step.ts'
import { readLine } from '../../../src/lines/read-line.ts'
import { told, topEnd } from '../told.ts'

const state = told(...topEnd, 'tighten valve cover bolts: 10 Nm')
const commandsOf = (line: string) => {
  const reading = readLine(line, state)
  return reading.kind === 'commands' ? reading.commands : reading
}
const critical = (step: number, afterMinutes: number | null) => [
  { do: 'change-step', step, critical: afterMinutes === null ? null : { afterMinutes } },
]

describe('a step is made critical', () => {
  test.each([
    ['step 2 critical', critical(2, SECOND_LOOK_MINUTES)],
    ['step 2 critical after 45 min', critical(2, 45)],
    ['step 2 critical, after 1 h 30 min', critical(2, 90)],
    ['step 2 critical after half an hour', critical(2, 30)],
    ['step 2 not critical', critical(2, null)],
  ])('%j', (line, commands) => expect(commandsOf(line)).toEqual(commands))

  test.each([
    ['step 2 critical after', { code: 'missing', what: 'TIME' }],
    [
      'step 2 critical after 30',
      { code: 'two-ways', ways: ['step 2 critical after 30 min', 'step 2 critical after 30 h'] },
    ],
    ['step 2 critical after lunch', { code: 'duration', part: 'lunch' }],
    ['step 2 critical after 0 min', { code: 'duration', part: '0 min' }],
    ['step 2 criticl', { code: 'not-understood', part: 'criticl' }],
  ])('%j is not understood', (line, misreading) =>
    expect(commandsOf(line)).toMatchObject({ kind: 'misread', misreading }),
  )
})

describe('a line is seen again', () => {
  const again = (line: string, says: string) => [{ do: 'see-again', line, says }]
  test.each([
    ['seen t1: stripes in line', again('t1', 'stripes in line')],
    ['seen M1: arrow to the chain: yes', again('m1', 'arrow to the chain: yes')],
    ['seen p2: tight', again('p2', 'tight')],
    ['seen valve cover bolts: all there', again('p1', 'all there')],
    ['seen cam cap I3: seated', again('p11', 'seated')],
  ])('%j', (line, commands) => expect(commandsOf(line)).toEqual(commands))

  test.each([
    ['seen', { code: 'missing', what: 'LINE' }],
    ['seen t1', { code: 'missing', what: 'WORDS' }],
    ['seen t1:', { code: 'missing', what: 'WORDS' }],
    ['seen t1,m2: tight', { code: 'one-each', parts: ['t1', 'm2'], nearest: 'seen t1: tight' }],
    ['seen t1 and m2', { code: 'one-each', parts: ['t1', 'm2'], nearest: 'seen t1: WORDS' }],
    ['seen cam cap I3, cam cap I4: seated', { code: 'one-each', parts: ['cam cap I3', 'cam cap I4'] }],
    ['seen flywheel: seated', { code: 'no-such-piece', part: 'flywheel' }],
  ])('%j is not understood', (line, misreading) =>
    expect(commandsOf(line)).toMatchObject({ kind: 'misread', misreading }),
  )

  test('of a set, the one that is meant is asked', () =>
    expect(commandsOf('seen cam cap: seated')).toMatchObject({
      kind: 'which-piece',
      pieces: ['p9', 'p10', 'p11', 'p12'],
    }))
})
