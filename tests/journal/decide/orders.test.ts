import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { decide } from '../../../src/journal/decide/decide.ts'
import { placesOf } from '../../../src/ledger/ledger.ts'
import type { PieceId } from '../../../src/ledger/piece.ts'
import {
  at,
  begin,
  bench,
  bought,
  end,
  fitted,
  into,
  job,
  look,
  move,
  off,
  set,
} from '../../errors/commands.ts'
import { arrived, cancelled, changed, kit, ordered, sentBack, wanted } from '../../errors/order-commands.ts'
import { play, refused } from '../../errors/play.ts'

const head = [job, begin('Head off')]
const usedBolts = [...head, off(8, 'head bolts', { singleUse: true }), end]
const eight = [...usedBolts, ordered({ piece: 'p1', name: 'head bolts', count: 8 })]
const pump = [...head, off(1, 'water pump', { kind: 'part' }), end]
const onePump = ordered({ piece: 'p1', name: 'water pump', count: 1 })
const judged = (piece: PieceId): Command => ({
  do: 'judge',
  pieces: [piece],
  verdict: 'replace',
  reason: 'worn',
})

function where(commands: Command[], piece: PieceId) {
  return placesOf(play(commands).state.ledger, piece).map(({ place, count }) => `${count} ${place}`)
}

function order(commands: Command[], id: `o${number}` = 'o1') {
  return play(commands).state.orders.get(id)
}

describe('ordering', () => {
  test('a line keeps the day on which it was ordered, and what is known about the part', () => {
    const known: Command = { do: 'note-part', piece: 'p1', partNo: '11-204', source: 'corner shop' }
    expect(
      order([...usedBolts, known, ordered({ piece: 'p1', name: 'head bolts', count: 8, source: 'mill' })]),
    ).toEqual({
      id: 'o1',
      name: 'head bolts',
      piece: 'p1',
      count: 8,
      ordered: true,
      since: '2026-05-02',
      partNo: '11-204',
      source: 'mill',
      arrived: 0,
      wrong: 0,
      returned: 0,
      cancelled: null,
    })
  })

  test('what is wanted has no such day until it is ordered', () => {
    const grease = [job, wanted({ name: 'grease', count: 2, unit: 'tubes' })]
    expect(order(grease)).toMatchObject({ ordered: false, since: null })
    expect(order([...grease, changed('o1', { ordered: true })])).toMatchObject({
      ordered: true,
      since: '2026-05-02',
    })
  })

  test('what was ordered already keeps its day when more is ordered', () => {
    expect(order([...eight, changed('o1', { ordered: true, count: 10 })])).toMatchObject({
      count: 10,
      since: '2026-05-02',
    })
  })

  test.each<[string, Command[], Command, object]>([
    ['nothing', usedBolts, ordered(), { code: 'text-missing' }],
    [
      'none of a piece',
      usedBolts,
      ordered({ piece: 'p1', name: 'x', count: 0 }),
      { code: 'count-wrong', count: 0 },
    ],
    ['half a piece', usedBolts, ordered({ piece: 'p1', name: 'x', count: 0.5 }), { code: 'count-wrong' }],
    ['no litres', [job], ordered({ name: 'oil', count: 0, unit: 'L' }), { code: 'count-wrong' }],
    ['without a name', [job], wanted({ name: ' ', count: 1 }), { code: 'text-missing', what: 'name' }],
    ['an unknown piece', [job], ordered({ piece: 'p9', name: 'x', count: 1 }), { code: 'unknown', id: 'p9' }],
    [
      'for a home that is left off',
      [...usedBolts, { do: 'leave-off', piece: 'p1', reason: 'plugged' }],
      ordered({ piece: 'p1', name: 'x', count: 1 }),
      { code: 'not-for-home' },
    ],
    [
      'for a day gone by',
      usedBolts,
      ordered({ piece: 'p1', name: 'x', count: 1, due: '2026-05-01' }),
      { code: 'date-past', day: '2026-05-01', today: '2026-05-02' },
    ],
    [
      'an unknown line',
      [job],
      changed('o7', { ordered: true }),
      { code: 'unknown', what: 'order', id: 'o7' },
    ],
    ['moved to a day gone by', eight, changed('o1', { due: '2026-05-01' }), { code: 'date-past' }],
    [
      'fewer than are here',
      [...eight, arrived('o1', 5)],
      changed('o1', { count: 4 }),
      { code: 'order-arrived' },
    ],
    ['cancelled without a reason', eight, changed('o1', { cancelled: ' ' }), { code: 'text-missing' }],
    ['cancelled twice', [...eight, cancelled('o1')], cancelled('o1'), { code: 'order-cancelled' }],
    [
      'a part of which nothing is said',
      usedBolts,
      { do: 'note-part', piece: 'p1' },
      { code: 'text-missing' },
    ],
  ])('%s is refused', (_, given, command, refusal) => {
    expect(refused(play(given).state, command)).toMatchObject(refusal)
  })
})

describe('arriving', () => {
  test('in parts: the first take the place of the old, the others join them', () => {
    const parts = [...eight, arrived('o1', 5), arrived('o1')]
    expect(where(parts, 'p2')).toEqual(['8 bench'])
    expect(order(parts)).toMatchObject({ arrived: 8 })
    expect(play(parts).state.ledger.accounts.get('p2')?.piece.replaces).toBe('p1')
  })

  test('surplus as spares of the same lot', () => {
    expect(where([...eight, arrived('o1', 10, 2)], 'p2')).toEqual(['8 bench', '2 spare'])
    expect(where([...eight, arrived('o1'), arrived('o1', 2, 2)], 'p2')).toEqual(['8 bench', '2 spare'])
  })

  test('into a bag whose label is in hand', () => {
    const command: Command = { do: 'receive', order: 'o1', into: into(1) }
    expect(where([...eight, command], 'p2')).toEqual(['8 c1'])
  })

  test('for what is only short, more of the same', () => {
    const short = [...head, off(5, 'cover bolts', { should: 8 }), end]
    const line = ordered({ piece: 'p1', name: 'cover bolts', count: 3 })
    expect(where([...short, line, arrived('o1')], 'p1')).toEqual(['5 c1', '3 bench'])
  })

  test('a part that was judged is replaced by the new one, which is compared with it', () => {
    const { state } = play([...pump, judged('p1'), onePump, arrived('o1')])
    expect(state.ledger.accounts.get('p2')).toMatchObject({ should: 1, piece: { replaces: 'p1' } })
    expect(state.comparisons.get('p2')).toMatchObject({ old: 'p1', verdict: 'due' })
  })

  test('a single part that came off is replaced even if nobody judged it', () => {
    const { state } = play([...pump, onePump, arrived('o1')])
    expect(state.ledger.accounts.get('p1')?.should).toBe(0)
    expect(state.ledger.accounts.get('p2')?.should).toBe(1)
  })

  test('a home of one takes one: a second is a spare', () => {
    const two = [...pump, judged('p1'), ordered({ piece: 'p1', name: 'water pump', count: 2 })]
    expect(where([...two, arrived('o1')], 'p2')).toEqual(['1 bench', '1 spare'])
    const seal = [...head, set('stem seals', ['I1', 'I2']), end, judged('p1')]
    const { state } = play([...seal, ordered({ piece: 'p1', name: 'seal', count: 3 }), arrived('o1')])
    expect(state.ledger.accounts.get('p3')).toMatchObject({ should: 1, home: { position: 'I1' } })
    // Spares of a matched piece have no position: its home has no room for a second.
    expect(state.ledger.accounts.get('p4')).toMatchObject({ should: 0, at: new Map([['spare', 2]]) })
    expect(state.ledger.accounts.get('p4')?.home.position).toBeUndefined()
  })

  test('what came otherwise in the meantime leaves no home: all of it is spare', () => {
    const twice = [...pump, judged('p1'), onePump, bought(1, 'p1', true), arrived('o1')]
    expect(where(twice, 'p2')).toEqual(['1 bench', '1 spare'])
  })

  test('what is for no piece only arrives', () => {
    const oil = [job, ordered({ name: 'oil', count: 2, unit: 'L' }), arrived('o1', 1.5)]
    expect(order(oil)).toMatchObject({ arrived: 1.5 })
    const { entries } = play(oil)
    expect(entries.at(-1)).toMatchObject({ type: 'supplied', pieces: [], moves: [] })
  })

  test.each<[string, Command[], Command, object]>([
    ['more than is to come', eight, arrived('o1', 9), { code: 'more-than-ordered', open: 8, arrived: 9 }],
    ['more than the spares account for', eight, arrived('o1', 10, 1), { code: 'more-than-ordered' }],
    ['more spares than there are', eight, arrived('o1', 2, 3), { code: 'count-wrong', count: 3 }],
    ['none', eight, arrived('o1', 0), { code: 'count-wrong' }],
    ['half a bolt', eight, arrived('o1', 0.5), { code: 'count-wrong' }],
    ['once more', [...eight, arrived('o1')], arrived('o1'), { code: 'order-arrived' }],
    ['what was cancelled', [...eight, cancelled('o1')], arrived('o1'), { code: 'order-cancelled' }],
    ['of no line', eight, arrived('o9'), { code: 'unknown', what: 'order' }],
  ])('%s is refused', (_, given, command, refusal) => {
    expect(refused(play(given).state, command)).toMatchObject(refusal)
  })
})

describe('going back', () => {
  test('spares go first; the line is to come again, and then arrives anew', () => {
    const back = [...eight, arrived('o1', 10, 2), sentBack('o1', 3)]
    expect(where(back, 'p2')).toEqual(['7 bench', '3 supplier'])
    expect(order(back)).toMatchObject({ arrived: 10, returned: 3 })
    expect(where([...back, arrived('o1')], 'p2')).toEqual(['8 bench', '3 supplier'])
  })

  test('the wrong one, and nothing else, when no number is said; the right one takes its home', () => {
    const wrong: Command = {
      do: 'compare',
      piece: 'p2',
      features: [],
      rest: 'wrong',
      says: 'for the other side',
    }
    const back = [...pump, judged('p1'), onePump, arrived('o1'), wrong, sentBack('o1')]
    expect(where(back, 'p2')).toEqual(['1 supplier'])
    expect(order(back)).toMatchObject({ arrived: 1, wrong: 0, returned: 1 })
    const { state } = play([...back, arrived('o1')])
    expect(state.ledger.accounts.get('p3')).toMatchObject({ should: 1, at: new Map([['bench', 1]]) })
    expect(state.comparisons.get('p3')).toMatchObject({ old: 'p1', verdict: 'due' })
  })

  test('what came by its own line, though what came by another has the home by now', () => {
    const wrong: Command = { do: 'compare', piece: 'p2', features: [], rest: 'wrong', says: 'mirrored' }
    const two = [...pump, judged('p1'), onePump, arrived('o1'), wrong, { ...onePump }, arrived('o2')]
    const back = [...two, sentBack('o1')]
    expect(where(back, 'p2')).toEqual(['1 supplier'])
    expect(where(back, 'p3')).toEqual(['1 bench'])
    expect(refused(play(back).state, sentBack('o1'))).toMatchObject({ code: 'more-than-arrived' })
    const gone = [...two, move('p2', at('lost'), { reason: 'fell' })]
    expect(refused(play(gone).state, sentBack('o1'))).toMatchObject({ code: 'not-within-reach', piece: 'p2' })
  })

  test('what was never for a piece is only written down', () => {
    const oil = [job, ordered({ name: 'oil', count: 2, unit: 'L' }), arrived('o1'), sentBack('o1', 0.5)]
    expect(order(oil)).toMatchObject({ arrived: 2, returned: 0.5 })
  })

  test.each<[string, Command[], Command, object]>([
    ['nothing is here', eight, sentBack('o1'), { code: 'more-than-arrived', here: 0 }],
    [
      'fewer are here',
      [...eight, arrived('o1', 2)],
      sentBack('o1', 3),
      { code: 'more-than-arrived', here: 2, wanted: 3 },
    ],
    [
      'some are lost',
      [...eight, arrived('o1'), move('p2', at('lost'), { count: 6, reason: 'fell' })],
      sentBack('o1', 3),
      { code: 'not-within-reach', wanted: 3, there: 2 },
    ],
    [
      'they are fitted',
      [...eight, arrived('o1'), look(1), fitted('p2')],
      sentBack('o1'),
      { code: 'already-fitted' },
    ],
    ['of no line', eight, sentBack('o9'), { code: 'unknown', what: 'order' }],
    [
      'no reason is given',
      [...eight, arrived('o1')],
      { do: 'return-order', order: 'o1', reason: ' ' },
      { code: 'text-missing' },
    ],
  ])('where %s it is refused', (_, given, command, refusal) => {
    expect(refused(play(given).state, command)).toMatchObject(refusal)
  })
})

describe('a kit', () => {
  const gaskets = [
    ...head,
    off(1, 'head gasket', { kind: 'part', singleUse: true }),
    set('stem seals', ['I1', 'I2', 'E1', 'E2']),
    off(6, 'cover bolts', { should: 8 }),
    end,
    judged('p2'),
    judged('p4'),
  ]
  const whole = kit(
    'top end',
    [['p1'], 'head gasket', 1],
    [['p2', 'p3', 'p4', 'p5'], 'stem seals', 4],
    [['p6'], 'cover bolts', 3],
    [[], 'drain plug', 1],
  )

  test('fills what is owed and declares the rest spare, in one entry', () => {
    const { state, entries } = play([...gaskets, whole])
    const entry = entries.at(-1)
    expect(entry).toMatchObject({
      type: 'supplied',
      kit: {
        name: 'top end',
        lines: [
          { name: 'head gasket', pieces: ['p1'], count: 1, spare: 0, short: 0 },
          { name: 'stem seals', pieces: ['p2', 'p4'], count: 4, spare: 2, short: 0 },
          { name: 'cover bolts', pieces: ['p6'], count: 3, spare: 1, short: 0 },
          { name: 'drain plug', pieces: [], count: 1, spare: 1, short: 0 },
        ],
      },
    })
    const lying = [...state.ledger.accounts.values()].map(({ piece, at: places }) =>
      [piece.name, ...places].flat(),
    )
    expect(lying).toContainEqual(['drain plug', 'spare', 1])
    expect(placesOf(state.ledger, 'p6').map(({ place, count }) => `${count} ${place}`)).toEqual([
      '6 c1',
      '2 bench',
      '1 spare',
    ])
    const heirs = [...state.ledger.accounts.values()].filter(({ piece }) => piece.replaces !== undefined)
    expect(heirs.map(({ piece }) => piece.replaces)).toEqual(['p1', 'p2', 'p4'])
    expect(new Set(heirs.map(({ piece }) => piece.id)).size).toBe(3)
  })

  test('counted short, it says by how many', () => {
    const { entries } = play([
      ...gaskets,
      kit('top end', [['p6'], 'cover bolts', 1], [['p2', 'p4'], 'stem seals', 1]),
    ])
    expect(entries.at(-1)).toMatchObject({ kit: { lines: [{ short: 1 }, { short: 1, pieces: ['p2'] }] } })
  })

  test('two lines for one home are one arrival', () => {
    const { state } = play([
      ...gaskets,
      kit('top end', [['p1'], 'head gasket', 1], [['p1'], 'head gasket', 1]),
    ])
    const heirs = [...state.ledger.accounts.values()].filter(({ piece }) => piece.replaces === 'p1')
    expect(heirs).toHaveLength(1)
    expect(heirs[0]?.at).toEqual(
      new Map([
        ['bench', 1],
        ['spare', 1],
      ]),
    )
  })

  test('goes into one new bag, and closes the order that it was', () => {
    const story = [...gaskets, ordered({ name: 'top end', count: 1 })]
    const command: Command = { ...whole, into: { kind: 'new', container: 'bag' }, order: 'o1' } as Command
    const { state } = play([...story, command])
    expect(state.orders.get('o1')).toMatchObject({ arrived: 1 })
    expect(state.containers.size).toBe(2)
    expect([...state.ledger.accounts.values()].filter(({ at: places }) => places.has('c2'))).toHaveLength(4)
  })

  test.each<[string, Command, object]>([
    ['without a name', kit(' ', [['p1'], 'head gasket', 1]), { code: 'text-missing', what: 'name' }],
    ['with nothing in it', kit('top end'), { code: 'text-missing', what: 'text' }],
    ['with none of a thing', kit('top end', [['p1'], 'head gasket', 0]), { code: 'count-wrong' }],
    ['with a thing without a name', kit('top end', [[], ' ', 1]), { code: 'text-missing' }],
    ['with an unknown piece', kit('top end', [['p99'], 'x', 1]), { code: 'unknown', id: 'p99' }],
    ['onto the machine', { ...whole, into: at('machine') } as Command, { code: 'through-a-step' }],
    ['of an unknown order', { ...whole, order: 'o9' } as Command, { code: 'unknown', what: 'order' }],
  ])('%s is refused', (_, command, refusal) => {
    expect(refused(play(gaskets).state, command)).toMatchObject(refusal)
  })

  test('an order that is here already, or was cancelled, is refused', () => {
    const story = [...gaskets, ordered({ name: 'top end', count: 1 })]
    const again = { ...whole, order: 'o1' } as Command
    expect(refused(play([...story, again]).state, again)).toEqual({ code: 'order-arrived', order: 'o1' })
    expect(refused(play([...story, arrived('o1')]).state, again)).toMatchObject({ code: 'order-arrived' })
    expect(refused(play([...story, cancelled('o1')]).state, again)).toMatchObject({ code: 'order-cancelled' })
  })

  test('what was decided is the same for the same state', () => {
    const { state } = play(gaskets)
    expect(decide(state, whole)).toEqual(decide(state, whole))
    expect(bench).toEqual({ kind: 'place', place: 'bench' })
  })
})
