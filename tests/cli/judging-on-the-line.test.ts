import { expect, test } from 'vitest'
import { performLine } from '../../src/cli/perform-line.ts'
import { begin, end, off, set } from '../errors/commands.ts'
import { sessionWith } from '../session/support/sessions.ts'

const around = { drawing: { isWide: false, invert: false, width: 80 } as never, otherJob: () => null }

function bench() {
  const session = sessionWith(
    begin('Engine off'),
    off(1, 'cylinder head', { kind: 'part' }),
    set('cam caps', ['I1', 'I2']),
    off(4, 'pump studs'),
    end,
  )
  return (line: string): string[] => {
    const result = performLine(session, line, around)
    if (!('ok' in result)) throw new Error('an errand')
    return result.ok ? result.text : [`refused ${result.code}`, result.told.what, result.told.cure]
  }
}

test('proposals: what is usually checked, a set by one number, and how it is taken', () => {
  const line = bench()
  const text = line('proposals')
  const checks = text.slice(
    text.indexOf('Usually checked before it goes back. Limits are in the service manual, never here.'),
  )
  expect(checks).toHaveLength(4)
  expect(checks[1]).toMatch(/^ {2}\d {2}cylinder head: clean .*; look for .*; measure flatness,? .*$/)
  expect(checks[2]).toMatch(/^ {2}\d {2}cam caps, 2 pieces: clean /)
  expect(checks[3]).toBe(
    'Take them with: accept 1,2 or: accept all (all steps) or: accept checks (all checks)',
  )
  expect(line('accept checks').filter((each) => /to be checked/.test(each))).toHaveLength(2)
  expect(line('proposals').join('\n')).not.toContain('Usually checked')
})

test('checks: nothing at first, then each piece with its checks, then the lists', () => {
  const line = bench()
  expect(line('checks')).toEqual([
    'Nothing is to be checked, and nothing was judged.',
    'What is usual for a kind of part: proposals',
  ])
  line('check cam cap I1: look for score')
  line('when metal in the oil: replace cylinder head')
  expect(line('checks')).toEqual([
    'p2  cam cap I1: NOT CHECKED',
    '    o k1  look for score',
    'Lists that a finding opens:',
    '  h1  when metal in the oil: replace cylinder head',
  ])
})

test('a scanned bag says what is not good and what is not checked', () => {
  const line = bench()
  line('check cam cap I1: look for score')
  expect(line('1')).toEqual([
    'bag 1, label 007 0001 03: NOT CHECKED, for step 1, Engine:',
    '  Cam cap I1 not checked (k1, look for score): "ok k1" if good, else "judge p2 replace because ...".',
    '  p1  1 × cylinder head: goes to Engine, step 1',
    '  p2  cam cap I1: goes to Engine / cam caps / I1, step 1',
    '  p3  cam cap I2: goes to Engine / cam caps / I2, step 1',
    '  p4  4 × pump studs: goes to Engine, step 1',
  ])
  line('judge cylinder head replace because cracked')
  expect(line('1')[0]).toBe('bag 1, label 007 0001 03: NOT GOOD, it does not go back, for step 1, Engine:')
})

test('a refusal names the cause and what to type', () => {
  const line = bench()
  expect(line('judge 5 pump studs replace because bent')).toEqual([
    'refused not-within-reach',
    'Pump studs: bag 1 holds 4, 5 wanted: 1 short.',
    'Count what is in your hand, and say that number.',
  ])
})
