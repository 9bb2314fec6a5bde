import { expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { outingView } from '../../src/session/outing-view.ts'
import { at, endStrip, off, strip } from '../support/commands.ts'
import { given } from '../support/journal.ts'

// The entries of these jobs are of 1 January 2030.

const head = given(
  strip('Seat off'),
  off(1, 'rocker', { kind: 'part', into: at('bench') }),
  off(2, 'seat bolts'),
  endStrip,
  { do: 'carry', on: 'p1', items: [{ kind: 'part', name: 'plugs', count: 4 }] },
  {
    do: 'send-out',
    to: 'Miller',
    due: '2030-01-04',
    pieces: [{ piece: 'p1' }, { piece: 'p2', count: 1 }],
  },
)
const back = (...pieces: { piece: 'p1' | 'p2' }[]): Command => ({
  do: 'come-back',
  outing: 'b1',
  into: at('bench'),
  pieces,
})
const view = ({ state }: { state: typeof head.state }, today = '2030-01-04') => {
  const outing = state.outings.get('b1')
  if (!outing) throw new Error('nothing is out')
  return outingView({ ...state, clock: { ...state.clock, today } }, outing)
}

test('an outing is away until the day after it was due, and what sits on it goes along', () => {
  expect(view(head)).toMatchObject({ standing: 'away', riders: [{ piece: 'p3', count: 4, on: 'p1' }] })
  expect(view(head, '2030-01-05').standing).toBe('overdue')
})

test('some of it back: late still, and what sits on that is no longer away', () => {
  const some = head.and(back({ piece: 'p1' }))
  expect(view(some, '2030-01-05')).toMatchObject({ standing: 'overdue', riders: [] })
})

test('all of it back: asked about, and then no more', () => {
  const all = head.and(back({ piece: 'p1' }, { piece: 'p2' }))
  expect(view(all, '2030-02-01').standing).toBe('unanswered')
  const answered = all.and({ ...back(), tookOut: { text: 'nothing', items: [] } } as Command)
  expect(view(answered).standing).toBe('back')
})
