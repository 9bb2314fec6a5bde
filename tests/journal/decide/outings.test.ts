import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { decide } from '../../../src/journal/decide/decide.ts'
import type { State } from '../../../src/journal/state.ts'
import { auditLedger } from '../../../src/ledger/laws.ts'
import { placesOf } from '../../../src/ledger/ledger.ts'
import type { PieceId } from '../../../src/ledger/piece.ts'
import { Gates } from '../../../src/plan/gates.ts'
import { at, bag, endStrip, matchedOff, move, newBag, off, slot, strip } from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

// The entries of these jobs are of 1 January 2030.

const head: Command = off(1, 'cylinder head', { kind: 'part', into: at('bench') })
const plugs: Command = { do: 'carry', on: 'p1', items: [{ kind: 'part', name: 'gallery plugs', count: 4 }] }
const apart = given(strip('Seat off'), head, off(6, 'head nuts'), endStrip)
const carrying = given(strip('Seat off'), head, endStrip, plugs)

const out = (...pieces: PieceId[]): Command => sent({ pieces: pieces.map((piece) => ({ piece })) })
const sent = (more: Partial<Extract<Command, { do: 'send-out' }>>): Command => ({
  do: 'send-out',
  to: 'Miller',
  pieces: [{ piece: 'p1' }],
  ...more,
})
const back = (more: Partial<Extract<Command, { do: 'come-back' }>> = {}): Command => ({
  do: 'come-back',
  outing: 'b1',
  into: at('bench'),
  ...more,
})
const took = (...items: [string, number, boolean][]): Command =>
  back({
    pieces: [],
    tookOut: {
      text: items.map(([name, count]) => `${count} ${name}`).join(', ') || 'nothing',
      items: items.map(([name, count, isBack]) => ({ name, count, back: isBack })),
    },
  })

const where = ({ state }: { state: State }, piece: PieceId) =>
  placesOf(state.ledger, piece).map(({ place, count }) => `${count} ${place}`)
const away = ({ state }: { state: State }) =>
  state.outings.get('b1')?.pieces.map(({ piece, count, away: left }) => `${piece} ${left}/${count}`)
const codes = ({ state }: { state: State }, step = 1) => new Gates(state).start(step).map(({ code }) => code)

describe('pieces go out', () => {
  test('all that lies within reach, with all that was said of it', () => {
    const { entries, state } = apart
      .when(sent({ why: ' to be skimmed ', due: '2030-01-04', expects: 'flat', pieces: [{ piece: 'p1' }] }))
      .makes('sent-out', { outing: { id: 'b1', to: 'Miller', why: 'to be skimmed', since: '2030-01-01' } })
    expect(entries.at(-1)).toMatchObject({ moves: [{ piece: 'p1', count: 1, from: 'bench', to: 'out' }] })
    expect(state.outings.get('b1')).toMatchObject({ due: '2030-01-04', expects: 'flat', tookOut: null })
  })

  test('some of a lot, and the step waits for them', () => {
    const some = apart.and(sent({ pieces: [{ piece: 'p2', count: 2 }] }))
    expect(where(some, 'p2')).toEqual(['4 c1', '2 out'])
    expect(codes(some)).toEqual(['piece-away'])
  })

  test('what sits on a piece goes where that goes, and stays on it', () => {
    const gone = carrying.and(out('p1'))
    expect(where(gone, 'p2')).toEqual(['4 p1'])
    expect(codes(gone)).toEqual(['piece-away', 'piece-away'])
    expect(codes(gone.and(back(), took()))).toEqual([])
  })

  test('what is left aside is taken off first', () => {
    const gone = carrying.and(sent({ aside: ['p2'] }))
    expect(where(gone, 'p2')).toEqual(['4 bench'])
    expect(gone.state.outings.get('b1')?.aside).toEqual(['p2'])
    expect(codes(gone)).toEqual(['piece-away'])
  })

  test('what was off before is noted as left aside, and stays where it lies', () => {
    const gone = apart.and(sent({ aside: ['p2'] }))
    expect(where(gone, 'p2')).toEqual(['6 c1'])
    expect(gone.state.outings.get('b1')?.aside).toEqual(['p2'])
  })

  test('a day that is today is still to come', () => {
    apart.when(sent({ due: '2030-01-01' })).makes('sent-out')
  })

  test.each<[string, Command, string, Record<string, unknown>]>([
    ['to nobody', sent({ to: ' ' }), 'text-missing', { what: 'name' }],
    ['no piece', sent({ pieces: [] }), 'text-missing', { what: 'name' }],
    ['until a day gone by', sent({ due: '2029-12-29' }), 'date-past', { today: '2030-01-01' }],
    [
      'more than there are',
      sent({ pieces: [{ piece: 'p2', count: 7 }] }),
      'not-within-reach',
      { wanted: 7, there: 6 },
    ],
    ['half a piece', sent({ pieces: [{ piece: 'p2', count: 0.5 }] }), 'count-wrong', { count: 0.5 }],
    ['a piece that stays', sent({ aside: ['p1'] }), 'goes-and-stays', { piece: 'p1' }],
    ['an unknown piece', out('p9'), 'unknown', { what: 'piece' }],
    ['the same piece twice', out('p1', 'p1'), 'law', {}],
  ])('%s: refused', (_, command, code, facts) => {
    apart.when(command).refuses(code as 'law', facts)
  })

  test('a piece on the machine comes off first, and one that is out is out', () => {
    const fitted = apart.and({ do: 'fit', fittings: [{ piece: 'p1' }] })
    fitted.when(out('p1')).refuses('already-fitted', { piece: 'p1' })
    apart.and(out('p1')).when(out('p1')).refuses('out-already', { piece: 'p1', outing: 'b1' })
    apart
      .and(move('p1', at('out')))
      .when(out('p1'))
      .refuses('out-already', { outing: null })
    apart
      .and(move('p1', at('scrap')))
      .when(out('p1'))
      .refuses('not-within-reach', { there: 0 })
  })

  test('a rag in the machine is no piece to send out', () => {
    given(strip('Head off'), { do: 'put-in', kind: 'aid', name: 'rag', count: 1 })
      .when(out('p1'))
      .refuses('not-for-home')
  })
})

describe('pieces come back', () => {
  const gone = apart.and(sent({ pieces: [{ piece: 'p1' }, { piece: 'p2', count: 4 }] }))

  test('all that is away, and the step waits until somebody says what was taken out', () => {
    const here = gone.and(back())
    expect(where(here, 'p1')).toEqual(['1 bench'])
    expect(away(here)).toEqual(['p1 0/1', 'p2 0/4'])
    expect(codes(here)).toEqual(['out-unanswered'])
    expect(codes(here.and(took()))).toEqual([])
  })

  test('what is short stays away, with the arithmetic', () => {
    const short = gone.and(back({ pieces: [{ piece: 'p2', count: 3 }] }))
    expect(where(short, 'p2')).toEqual(['2 c1', '1 out', '3 bench'])
    expect(away(short)).toEqual(['p1 1/1', 'p2 1/4'])
    // Something is back, so the question is open already.
    expect(codes(short)).toEqual(['piece-away', 'piece-away', 'out-unanswered'])
    short.when(back({ pieces: [{ piece: 'p2', count: 2 }] })).refuses('too-many-back', { away: 1, wanted: 2 })
  })

  test('by a piece alone, without the number of the outing', () => {
    gone.when(back({ outing: undefined, pieces: [{ piece: 'p1' }] })).makes('came-back', { outing: 'b1' })
  })

  test('into a bag, into a new one, and each matched piece into a slot of its own', () => {
    expect(where(gone.and(back({ into: bag(1), pieces: [{ piece: 'p2' }] })), 'p2')).toEqual(['6 c1'])
    expect(where(gone.and(back({ into: newBag })), 'p1')).toEqual(['1 c2'])
    const caps = given(
      strip('Cam caps off'),
      matchedOff(['1', '2', '3'], 'cam caps'),
      { do: 'open-container', kind: 'tray', slots: 4 },
      out('p1', 'p2', 'p3'),
      back({ into: bag(2) }),
    )
    expect(['p1', 'p2', 'p3'].flatMap((id) => where(caps, id as PieceId))).toEqual([
      '1 c2/1',
      '1 c2/2',
      '1 c2/3',
    ])
    gone.when(back({ into: slot(1, 3) })).refuses('no-such-slot')
  })

  test('by a plain move too: then no more is away than is out', () => {
    const moved = gone.and(move('p1', at('bench'), { from: 'out' }))
    expect(away(moved)).toEqual(['p1 0/1', 'p2 4/4'])
    expect(away(moved.and(move('p2', at('bench'), { from: 'out', count: 1 })))).toEqual(['p1 0/1', 'p2 3/4'])
  })

  test('taken back, it is away as before', () => {
    expect(away(gone.and(back(), { do: 'undo' }))).toEqual(['p1 1/1', 'p2 4/4'])
  })

  test.each<[string, Command, string, Record<string, unknown>]>([
    ['of an outing that never was', back({ outing: 'b7' }), 'unknown', { what: 'outing' }],
    ['none of a piece', back({ pieces: [{ piece: 'p1', count: 0 }] }), 'count-wrong', { count: 0 }],
    ['onto the machine', back({ into: at('machine') }), 'through-a-step', { piece: 'p1' }],
    ['lost, without a reason', back({ into: at('lost') }), 'text-missing', { what: 'reason' }],
    ['nothing named', back({ outing: undefined }), 'text-missing', { what: 'name' }],
  ])('%s: refused', (_, command, code, facts) => {
    gone.when(command).refuses(code as 'law', facts)
  })

  test('what never went, or is back, is refused with who has what', () => {
    apart
      .when(back({ outing: undefined, pieces: [{ piece: 'p1' }] }))
      .refuses('not-out', { piece: 'p1', outing: null })
    apart
      .and(out('p1'))
      .when(back({ pieces: [{ piece: 'p2' }] }))
      .refuses('not-out', { piece: 'p2', outing: 'b1' })
    const here = gone.and(back())
    here
      .when(back({ outing: undefined, pieces: [{ piece: 'p1' }] }))
      .refuses('back-already', { outing: 'b1', piece: 'p1' })
    here.when(back()).refuses('back-already', { outing: 'b1', piece: null })
    here.when(back({ pieces: [{ piece: 'p1' }] })).refuses('back-already', { outing: 'b1', piece: 'p1' })
  })
})

describe('what the shop took out', () => {
  const here = apart.and(out('p1'), back())

  test('nothing is an answer', () => {
    const answered = here.and(took())
    expect(answered.state.outings.get('b1')?.tookOut).toEqual({ text: 'nothing', pieces: [] })
    expect(codes(answered)).toEqual([])
  })

  test('what came along lies on the bench, what did not is still away, and each belongs to where it came from', () => {
    const answered = here.and(took(['gallery plugs', 2, true], ['guides', 4, false]))
    expect(where(answered, 'p3')).toEqual(['2 bench'])
    expect(where(answered, 'p4')).toEqual(['4 out'])
    expect(answered.state.ledger.accounts.get('p3')?.piece).toMatchObject({
      name: 'gallery plugs',
      home: { at: 'cylinder head' },
      should: 2,
      step: 1,
    })
    expect(away(answered)).toEqual(['p1 0/1', 'p4 4/4'])
    expect(codes(answered)).toEqual(['piece-away'])
    expect(codes(answered.and(back()))).toEqual([])
    expect(auditLedger(answered.state.ledger)).toEqual([])
  })

  test('some of a lot back and one not is one lot', () => {
    const answered = here.and(took(['gallery plugs', 2, true], ['gallery plug', 1, false]))
    expect(where(answered, 'p3')).toEqual(['2 bench', '1 out'])
    expect(answered.state.ledger.accounts.get('p3')?.should).toBe(3)
    expect(answered.state.ledger.accounts.has('p4')).toBe(false)
  })

  test('what sat on it as a line of its own is moved, and not entered a second time', () => {
    const answered = carrying.and(out('p1'), back(), took(['gallery plug', 3, true]))
    expect(where(answered, 'p2')).toEqual(['1 p1', '3 bench'])
    expect(answered.state.ledger.accounts.size).toBe(2)
    expect(answered.state.outings.get('b1')?.tookOut?.pieces).toEqual(['p2'])
  })

  test('more than sat on it is refused', () => {
    carrying
      .and(out('p1'), back())
      .when(took(['gallery plugs', 5, true]))
      .refuses('law', { violation: { law: 'more-than-there', there: 4, wanted: 5 } })
  })

  test('what was said to be there still can come later by its name, and once only', () => {
    const later = here.and(took(['guides', 4, false]), took(['guides', 4, true]))
    expect(where(later, 'p3')).toEqual(['4 bench'])
    expect(away(later)).toEqual(['p1 0/1', 'p3 0/4'])
    later.when(took(['guides', 4, true])).refuses('taken-out-already', { piece: 'p3' })
  })

  test('is said in the same breath as the return, and of the piece that is named', () => {
    const both = apart.and(out('p1', 'p2'))
    const { state } = both
      .when(
        back({
          tookOut: { text: '1 dowel', items: [{ name: 'dowel', count: 1, back: true, from: 'p2' }] },
          result: 'skimmed by 0.1 mm',
        }),
      )
      .makes('came-back')
    expect(state.ledger.accounts.get('p3')?.piece.home).toEqual({ at: 'head nuts' })
    expect(state.outings.get('b1')).toMatchObject({ result: 'skimmed by 0.1 mm' })
    both
      .when(back({ tookOut: { text: 'x', items: [{ name: 'x', count: 1, back: true, from: 'p9' }] } }))
      .refuses('not-out', { piece: 'p9' })
  })

  test('may be passed over with a reason, as soon as something is back', () => {
    const passed = here.and({ do: 'override', target: 'b1', reason: 'the shop only measured it' })
    expect(codes(passed)).toEqual([])
    apart
      .and(out('p1'))
      .when({ do: 'override', target: 'b1', reason: 'x' })
      .refuses('nothing-to-override', { target: 'b1' })
  })

  test('is not asked of what is lent', () => {
    expect(codes(apart.and(sent({ job: 12 }), back()))).toEqual([])
  })
})

test('an older record that sends pieces out by a plain move is read as before', () => {
  const gone = apart.and(move('p1', at('out'), { reason: 'to be skimmed' }))
  expect(codes(gone)).toEqual(['piece-away'])
  expect(codes(gone.and(move('p1', at('bench'))))).toEqual([])
})

test('a decision changes nothing', () => {
  const before = JSON.stringify([...apart.state.ledger.accounts])
  decide(apart.state, out('p1'))
  expect(JSON.stringify([...apart.state.ledger.accounts])).toBe(before)
})
