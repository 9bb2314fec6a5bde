import { expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import type { State } from '../../src/journal/state.ts'
import { dueView } from '../../src/session/due-view.ts'
import { judgedSet, judgingView } from '../../src/session/judging-view.ts'
import { begin, end, job, off, set } from '../errors/commands.ts'
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

/** The entries of these jobs are of one day; it is asked on another. */
function due(commands: readonly Command[], on?: string) {
  const { state } = play([...engine, ...commands])
  return { state, ...dueView(on === undefined ? state : dayOf(state, on)) }
}

const dayOf = (state: State, today: string): State => ({ ...state, clock: { ...state.clock, today } })

const look = (...pieces: `p${number}`[]): Command => ({
  do: 'ask-checks',
  checks: pieces.map((piece) => ({ piece, kind: 'look', what: ['score'] })),
})
const order = (name: string, day: string | undefined, ordered = true): Command => ({
  do: 'line-orders',
  ordered,
  lines: [{ name, count: 2, due: day }],
})
const out = (day: string | undefined): Command => ({
  do: 'send-out',
  to: 'Miller',
  due: day,
  pieces: [{ piece: 'p1' }],
})

test('nothing is due where nothing was asked or sent out', () => {
  const { state: _, ...groups } = due([])
  expect(Object.values(groups).flat()).toEqual([])
})

test('the checks of a matched set stand together, those of other pieces by themselves', () => {
  const { checks } = due([look('p1', 'p2', 'p3')])
  expect(checks.map(({ pieces }) => pieces)).toEqual([['p1'], ['p2', 'p3']])
  expect(checks.flatMap((group) => group.checks.map(({ id }) => id))).toEqual(['k1', 'k2', 'k3'])
})

test('a check that is done, or passed over, is not due', () => {
  const { checks } = due([
    look('p1', 'p4'),
    { do: 'pass-checks', checks: ['k1'] },
    { do: 'override', target: 'k2', reason: 'it was looked at last week' },
  ])
  expect(checks).toEqual([])
})

test('a verdict is due until what it asks for has come', () => {
  const condemned: Command[] = [{ do: 'judge', pieces: ['p4'], verdict: 'replace', reason: 'scored' }]
  expect(due(condemned).judged.map(({ piece }) => piece)).toEqual(['p4'])
  const supplied: Command[] = [
    ...condemned,
    { do: 'supply', piece: 'p4', count: 1, into: { kind: 'place', place: 'bench' }, instead: false },
  ]
  const { judged, comparisons } = due(supplied)
  expect(judged).toEqual([])
  expect(comparisons.map(({ piece, old }) => [piece, old])).toEqual([['p5', 'p4']])
})

test('what is late is late alone, the longest first, outings among orders', () => {
  const today = play(engine).state.clock.today
  const [year = ''] = today.split('-')
  const [first, second] = [`${Number(year) + 1}-03-04`, `${Number(year) + 1}-03-05`]
  const commands = [order('seals', second), out(first), order('grease', undefined)]
  expect(due(commands, first).late).toEqual([])
  const late = due(commands, `${Number(year) + 1}-03-06`)
  expect(late.late.map((thing) => ('outing' in thing ? thing.outing.id : thing.order.id))).toEqual([
    'b1',
    'o1',
  ])
  expect(late.outings).toEqual([])
  expect(late.orders.map((view) => view.order.id)).toEqual(['o2'])
})

test('what is only wanted is never late, and what is cancelled or here is not due', () => {
  const commands: Command[] = [
    order('seals', undefined, false),
    order('grease', undefined),
    order('rags', undefined),
    { do: 'change-order', order: 'o2', cancelled: 'there is some left' },
    { do: 'receive', order: 'o3', into: { kind: 'place', place: 'bench' } },
  ]
  const { orders, late } = due(commands)
  expect(orders.map(({ order: { id }, standing }) => [id, standing])).toEqual([['o1', 'wanted']])
  expect(late).toEqual([])
})

test('a set is the pieces of it that are asked about; a piece without one is alone', () => {
  const { state } = due([look('p1', 'p2', 'p3')])
  expect(judgedSet(state, 'p3')).toEqual(['p2', 'p3'])
  expect(judgedSet(state, 'p1')).toEqual(['p1'])
})

test('a piece keeps the order of its checks when one is done, and names what belongs together with it', () => {
  const { state } = due([
    look('p1'),
    look('p1'),
    { do: 'pass-checks', checks: ['k1'] },
    { do: 'bind', pieces: ['p1', 'p2', 'p3'], reason: 'bored as one' },
  ])
  const view = judgingView(state, 'p1')
  expect(view.checks.map(({ check }) => [check.id, check.done !== null])).toEqual([
    ['k1', true],
    ['k2', false],
  ])
  expect(view.together).toEqual(['p2', 'p3'])
})
