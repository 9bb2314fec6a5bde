import { expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { judgedPieces } from '../../src/session/check-views.ts'
import { judgedRows, triggerRows } from '../../src/words/judging/checks-text.ts'
import { begin, bought, end, job, off, set } from '../errors/commands.ts'
import { asked, flatness, judged, listed, passed } from '../errors/judging-commands.ts'
import { play } from '../errors/play.ts'

// p1 cylinder head, p2 and p3 cam caps I1 and I2, p4 oil pump.
const engine: Command[] = [
  job,
  begin('Engine off'),
  off(1, 'cylinder head', { kind: 'part' }),
  set('cam caps', ['I1', 'I2']),
  off(1, 'oil pump', { kind: 'part' }),
  end,
]

function told(...commands: Command[]): string[] {
  const { state } = play([...engine, ...commands])
  return judgedPieces(state).flatMap((piece) => judgedRows(state, piece))
}

test('nothing asked, nothing shown', () => {
  expect(told()).toEqual([])
})

test('what waits comes first, with what is open and what was measured', () => {
  expect(
    told(
      asked('p4', 'look', 'score'),
      passed(['k1'], 'bright'),
      asked('p1', 'measure', 'flatness', 'run-out'),
      flatness('p1', 0.02, 0.09),
      judged('machine', 'tight', 'p2'),
    ),
  ).toEqual([
    'p1  cylinder head: NOT CHECKED',
    '    o k2  measure flatness and run-out, not measured yet: run-out',
    '        q1 flatness of p1: 0.09 mm, OUT: 0.04 mm over the limit of 0.05 mm',
    'p2  cam cap I1: NOT GOOD, to be machined',
    '    judged: to be machined, because tight',
    'p4  oil pump: GOOD',
    '    ✓ k1  look for score: bright',
  ])
})

test('what was replaced is shown no more, and what took its place is to be compared', () => {
  expect(told(asked('p4', 'look'), judged('replace', 'it leaks', 'p4'), bought(1, 'p4', true))).toEqual([
    'p5  oil pump: NOT COMPARED',
    '    to be compared with the old one, p4',
  ])
})

test('a list with what it asks for', () => {
  const { state } = play([
    ...engine,
    listed(
      'metal in the oil',
      { do: 'replace', piece: 'p4' },
      { do: 'check', piece: 'p2', kind: 'look', what: ['score'] },
      { do: 'check', piece: 'p3', kind: 'look', what: ['score'] },
    ),
  ])
  expect([...state.triggers.values()].flatMap((list) => triggerRows(state, list))).toEqual([
    'h1  when metal in the oil: replace oil pump; check cam caps I1, I2, look for score',
  ])
})
