import type { Command } from '../../src/journal/command.ts'
import type { CureTarget, OrderId, OutingId, SecondLine } from '../../src/plan/waiting/waiting-facts.ts'
import type { Pick } from './pick.ts'

type Make = (pick: Pick) => Command

const days = ['2030-01-05', undefined, '2029-12-31', undefined, '2030-02-01']
const price = { minor: 1250, currency: 'EUR', typed: '12.50 EUR' }

/** An order that is open, where there is one. */
const order = (pick: Pick, by: number): OrderId => {
  const open = [...pick.state.orders.values()].filter(
    ({ cancelled, arrived, count, wrong }) => cancelled === null && (arrived < count || wrong > 0),
  )
  const one = open[by % (open.length || 1)]
  return by % 5 > 0 && one ? one.id : pick.numbered('o', pick.state.dealt.order, by)
}

/** An order of which something is here, where there is one. */
const arrived = (pick: Pick, by: number): OrderId => {
  const here = [...pick.state.orders.values()].filter((line) => line.arrived > line.returned)
  return here[by % (here.length || 1)]?.id ?? order(pick, by)
}

/** An outing of which something is away, or nobody has answered for, where there is one. */
const outing = (pick: Pick, by: number): OutingId => {
  const open = [...pick.state.outings.values()].filter(
    ({ pieces, tookOut }) => tookOut === null || pieces.some(({ away }) => away > 0),
  )
  const one = open[by % (open.length || 1)]
  return by % 5 > 0 && one ? one.id : pick.numbered('b', pick.state.dealt.outing, by)
}

/** Something of a step that was done, so that it may be seen again. */
const line = (pick: Pick, by: number): SecondLine =>
  pick.some<SecondLine>(
    [
      pick.piece(by >> 2),
      pick.piece(by >> 1),
      pick.numbered('m', pick.state.dealt.mark, by),
      pick.numbered('t', pick.state.dealt.tightening, by),
      pick.numbered('s', pick.state.dealt.consumable, by),
    ],
    by,
  )

/** What is ordered, sent out, put on and seen twice. */
export const wildWaiting = {
  'line-orders': (pick) => ({
    do: 'line-orders',
    lines: [
      {
        piece: pick.c % 4 === 0 ? undefined : pick.piece(pick.a),
        name: pick.some(['M6 bolt', 'grease', ''], pick.a),
        count: pick.some([1, 2, 3, 2, 0, 0.5], pick.b),
        due: pick.some(days, pick.c),
        partNo: pick.some([undefined, '11-204'], pick.b),
        price: pick.some([undefined, price], pick.c),
      },
      { name: 'rags', count: 2, unit: 'packs' },
    ].slice(0, pick.c % 13 === 0 ? 0 : 1 + (pick.c % 2)),
    ordered: pick.a % 3 > 0,
  }),
  'change-order': (pick) => ({
    do: 'change-order',
    order: order(pick, pick.a),
    ordered: pick.some([undefined, true as const, undefined], pick.b),
    count: pick.c % 5 === 0 ? 1 + (pick.b % 4) : undefined,
    due: pick.c % 4 === 1 ? pick.some(days, pick.b) : undefined,
    cancelled: pick.c % 9 === 2 ? pick.reason(pick.b) : undefined,
    partNo: pick.c % 4 === 3 ? '11-205' : undefined,
  }),
  receive: (pick) => ({
    do: 'receive',
    order: order(pick, pick.a),
    count: pick.some([undefined, 1, 2, undefined, 9, 0], pick.b),
    spare: pick.b % 6 === 2 ? 1 : undefined,
    into: pick.into(pick.c),
    size: pick.c % 8 === 0 ? '2.50' : undefined,
  }),
  'return-order': (pick) => ({
    do: 'return-order',
    order: arrived(pick, pick.a),
    count: pick.some([undefined, 1, 5], pick.b),
    reason: pick.reason(pick.c),
  }),
  'note-part': (pick) => ({
    do: 'note-part',
    piece: pick.piece(pick.a),
    partNo: pick.some([undefined, '11-206', '11-207'], pick.b),
    price: pick.some([price, undefined], pick.c),
    source: pick.some(['the counter', undefined], pick.b),
  }),
  'count-in': (pick) => ({
    do: 'count-in',
    name: pick.some(['gasket kit', 'gasket kit', ' '], pick.a),
    lines: [
      { pieces: [pick.piece(pick.a)], name: 'gasket', count: 1 + (pick.b % 4) },
      { pieces: [pick.piece(pick.c), pick.piece(pick.b)], name: 'bolts', count: pick.c % 7 === 0 ? 0 : 2 },
      { pieces: [], name: 'O-ring', count: 1 },
    ].slice(pick.b % 3, pick.c % 11 === 0 ? 1 : 3),
    into: pick.into(pick.c),
  }),
  'send-out': (pick) => ({
    do: 'send-out',
    to: pick.some(['the machine shop', 'the welder', ''], pick.a >> 1),
    pieces: [
      { piece: pick.piece(pick.a), count: pick.some([undefined, 1, undefined, 7], pick.c) },
      { piece: pick.piece(pick.b) },
    ].slice(0, pick.c % 13 === 0 ? 0 : 1 + (pick.c % 2)),
    due: pick.some(days, pick.b),
    expects: pick.some([undefined, '0.1 mm off'], pick.c),
    aside: pick.b % 5 === 0 ? [pick.piece(pick.c)] : undefined,
    job: pick.c % 8 === 5 ? 12 : undefined,
  }),
  'come-back': (pick) => {
    const id = outing(pick, pick.a)
    const away = pick.state.outings.get(id)?.pieces.find((each) => each.away > 0)?.piece
    return {
      do: 'come-back',
      outing: pick.a % 4 === 0 ? undefined : id,
      pieces: pick.some(
        [undefined, [], [{ piece: away ?? pick.piece(pick.b), count: 1 }], [{ piece: pick.piece(pick.b) }]],
        pick.b,
      ),
      into: pick.into(pick.c),
      tookOut: pick.some(
        [
          { text: 'nothing', items: [] },
          undefined,
          { text: '2 plugs', items: [{ name: 'plug', count: 2, back: pick.a % 2 === 0 }] },
          { text: ' ', items: [] },
        ],
        pick.c,
      ),
      result: pick.some([undefined, '0.1 mm off'], pick.a),
    }
  },
  'set-consumable': (pick) => ({
    do: 'set-consumable',
    step: pick.step(pick.a),
    kind: pick.some(['sealant', 'locker', 'lubricant', 'gasket', 'other'] as const, pick.b),
    name: pick.some(['grey sealant', 'copper paste', 'grey sealant', ''], pick.a),
    side: pick.b % 5 === 3 ? 'print' : undefined,
    // Entries come a second apart: short times, so that some run out and some do not.
    workMinutes: pick.some([undefined, 0.05, 5, undefined, -1], pick.b),
    cureMinutes: pick.some([undefined, 0.1, 0.3, undefined, 60, undefined], pick.c),
    before: pick.some<CureTarget[] | undefined>(
      [undefined, [pick.step(pick.b)], ['start'], [pick.numbered('f', pick.state.dealt.fluid, pick.b)], [99]],
      pick.c >> 1,
    ),
    expires: pick.c % 9 === 0 ? pick.some(days, pick.b) : undefined,
    amount: pick.some([undefined, '1 tube'], pick.a),
  }),
  'drop-consumable': (pick) => ({
    do: 'drop-consumable',
    consumable: pick.numbered('s', pick.state.dealt.consumable, pick.a),
    reason: pick.reason(pick.b),
  }),
  apply: (pick) => ({ do: 'apply', consumable: pick.numbered('s', pick.state.dealt.consumable, pick.a) }),
  'see-again': (pick) => ({
    do: 'see-again',
    step: pick.b % 3 === 0 ? pick.step(pick.a) : undefined,
    line: line(pick, pick.c),
    says: pick.reason(pick.a),
  }),
} satisfies Record<string, Make>
