import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { parseEntry } from '../../src/journal/entry.ts'
import type { Borrowing } from '../../src/lines/errand.ts'
import { borrow } from '../../src/session/borrow.ts'
import { type Outcome, Session } from '../../src/session/session.ts'
import { openJournal } from '../../src/storage/journal/open-journal.ts'
import { temporaryFolder } from '../storage/support/temporary-folder.ts'
import { at, endStrip, move, off } from '../support/commands.ts'
import { tell } from './support/sessions.ts'

/** A session that answers some commands as if the disk or another program had a say in them. */
class Disturbed extends Session {
  disturb: (command: Command) => Outcome | null = () => null
  override send(command: Command): Outcome {
    return this.disturb(command) ?? super.send(command)
  }
}

function jobOf(no: number, name: string, ...commands: Command[]): Disturbed {
  const session = new Disturbed(openJournal(temporaryFolder(), { parse: parseEntry }))
  tell(session, { do: 'open-job', no, name, machine: '', units: 'metric' }, ...commands)
  return session
}

const lenderOf = () => jobOf(1, 'red twin', off(6, 'bolts'), endStrip)
const takerOf = () => jobOf(2, 'blue twin', off(6, 'bolts', { found: 5 }), endStrip)
const asked: Borrowing = {
  errand: 'borrow',
  job: 1,
  words: 'bolts',
  count: 1,
  piece: 'p1',
  instead: false,
  into: at('bench'),
}
const full = new Error('no space left')
const places = ({ state }: Session) => [...(state.ledger.accounts.get('p1')?.at ?? [])]

test('both records say so, each in an entry of its own', () => {
  const [lender, taker] = [lenderOf(), takerOf()]
  const borrowed = borrow(lender, taker, asked)
  expect(borrowed).toMatchObject({
    kind: 'borrowed',
    lent: { type: 'sent-out', outing: { job: 2, to: 'job 2, blue twin' } },
    taken: { type: 'supplied', borrowed: { job: 1, name: 'red twin' } },
  })
  expect(places(lender)).toEqual([
    ['c1', 5],
    ['out', 1],
  ])
  expect(places(taker)).toEqual([
    ['c1', 5],
    ['bench', 1],
  ])
})

describe('neither record says so', () => {
  test.each<[string, Partial<Borrowing>, object]>([
    ['no such piece', { words: 'flywheel' }, { kind: 'no-such-piece' }],
    ['more than are there', { count: 7 }, { kind: 'refused', in: 'lender' }],
    ['no piece here that takes it', { piece: 'p9' }, { kind: 'refused', in: 'taker' }],
  ])('%s', (_, more, outcome) => {
    const [lender, taker] = [lenderOf(), takerOf()]
    expect(borrow(lender, taker, { ...asked, ...more })).toMatchObject(outcome)
    expect(lender.state.outings.size).toBe(0)
    expect(places(taker)).toEqual([['c1', 5]])
  })

  test('from the job itself', () => {
    const lender = lenderOf()
    expect(borrow(lender, lender, asked)).toEqual({ kind: 'itself' })
  })

  test('where the one that lends cannot be written', () => {
    const [lender, taker] = [lenderOf(), takerOf()]
    lender.disturb = () => ({ kind: 'not-recorded', error: full })
    expect(borrow(lender, taker, asked)).toEqual({
      kind: 'not-recorded',
      in: 'lender',
      error: full,
    })
    expect(places(taker)).toEqual([['c1', 5]])
  })

  test('where the one that takes cannot be written: the first is taken back', () => {
    const [lender, taker] = [lenderOf(), takerOf()]
    taker.disturb = () => ({ kind: 'not-recorded', error: full })
    expect(borrow(lender, taker, asked)).toEqual({
      kind: 'not-recorded',
      in: 'taker',
      error: full,
    })
    expect(lender.state.outings.size).toBe(0)
    expect(places(lender)).toEqual([['c1', 6]])
  })

  test('where another program was faster than the one that takes', () => {
    const [lender, taker] = [lenderOf(), takerOf()]
    taker.disturb = () => ({ kind: 'refused', refusal: { code: 'job-closed' } })
    expect(borrow(lender, taker, asked)).toMatchObject({ kind: 'refused', in: 'taker' })
    expect(places(lender)).toEqual([['c1', 6]])
  })
})

test('what could not be taken back is said, with the entry that stands', () => {
  const [lender, taker] = [lenderOf(), takerOf()]
  taker.disturb = () => ({ kind: 'not-recorded', error: full })
  lender.disturb = (command) => (command.do === 'undo' ? { kind: 'not-recorded', error: full } : null)
  expect(borrow(lender, taker, asked)).toMatchObject({
    kind: 'still-lent',
    outing: 'b1',
    lent: { type: 'sent-out' },
  })
  // So it has to be told, for the one record says so still.
  expect(lender.state.outings.size).toBe(1)
})

test('what lies in scrap there is not lent', () => {
  const [lender, taker] = [lenderOf(), takerOf()]
  tell(lender, move('p1', at('scrap')))
  expect(borrow(lender, taker, asked)).toMatchObject({ kind: 'refused', in: 'lender' })
})
