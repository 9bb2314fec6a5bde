import { expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { checkProposals, checksOf } from '../../../src/plan/judging/check-proposals.ts'
import { begin, bought, end, fitted, gasket, off, put, set, take } from '../../errors/commands.ts'
import { asked, judged } from '../../errors/judging-commands.ts'
import { given } from '../../support/journal.ts'

// p1 cylinder head, p2 to p4 cam caps, p5 pump bolts, p6 cylinder head bolts, p7 gasket, p8 a part of no known kind.
const engine: Command[] = [
  begin('Engine off'),
  off(1, 'cylinder head', { kind: 'part' }),
  set('cam caps', ['I1', 'I2', 'I3']),
  off(8, 'pump bolts'),
  off(6, 'cylinder head bolts'),
  gasket,
  off(1, 'gizmo', { kind: 'part' }),
  put('rag', 'inlet port'),
  end,
]

const pieces = (...commands: Command[]) =>
  checkProposals(given(...engine, ...commands).state).map((proposal) => proposal.pieces.join())

test('one for a part, one for a set, none for hardware, for what is used once or of no known kind', () => {
  expect(pieces()).toEqual(['p1', 'p2,p3,p4', 'p6'])
})

test.each<[string, Command[], string[]]>([
  ['is asked already', [asked('p1')], ['p2,p3,p4', 'p6']],
  ['is of a set that is asked', [asked('p3')], ['p1', 'p6']],
  ['was judged', [judged('fit-again', 'good', 'p1')], ['p2,p3,p4', 'p6']],
  ['is new', [bought(1, 'p1', true)], ['p2,p3,p4', 'p6']],
])('nothing for what %s', (_says, commands, expected) => {
  expect(pieces(...commands)).toEqual(expected)
})

test('nothing for what is on the machine', () => {
  const { state } = given(
    begin('Engine off'),
    off(1, 'oil pump', { kind: 'part' }),
    end,
    take(1),
    fitted('p1'),
  )
  expect(checkProposals(state)).toEqual([])
})

test('a set is asked piece by piece, once of each kind', () => {
  const caps = checkProposals(given(...engine).state)[1]
  const checks = caps ? checksOf(caps) : []
  const kinds = caps?.checks.map(({ kind }) => kind) ?? []
  expect(kinds).toContain('measure')
  expect(checks.map(({ piece, kind }) => `${piece} ${kind}`)).toEqual(
    ['p2', 'p3', 'p4'].flatMap((piece) => kinds.map((kind) => `${piece} ${kind}`)),
  )
})

test('what is accepted is accepted by the record, and proposed no more', () => {
  const told = given(...engine)
  const checks = checkProposals(told.state).flatMap(checksOf)
  expect(checkProposals(told.and({ do: 'ask-checks', checks }).state)).toEqual([])
})

test('the ends of a hose are one hose', () => {
  const hose = off(2, 'coolant hose', { kind: 'connection', positions: ['radiator', 'pump'] })
  expect(checkProposals(given(begin('Engine off'), hose, end).state)).toMatchObject([{ pieces: ['p1'] }])
})
