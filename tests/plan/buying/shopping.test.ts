import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { decide } from '../../../src/journal/decide/decide.ts'
import type { Entry } from '../../../src/journal/entry.ts'
import { foldOn } from '../../../src/journal/fold.ts'
import type { State } from '../../../src/journal/state.ts'
import type { PieceId } from '../../../src/ledger/piece.ts'
import { type ShoppingLine, shopping } from '../../../src/plan/buying/shopping.ts'
import type { OrderId } from '../../../src/plan/waiting/waiting-facts.ts'
import {
  at,
  begin,
  bench,
  bought,
  drained,
  end,
  filled,
  fitted,
  job,
  look,
  move,
  off,
  set,
  take,
} from '../../errors/commands.ts'
import { arrived, cancelled, changed, kit, ordered, sentBack, wanted } from '../../errors/order-commands.ts'
import { play } from '../../errors/play.ts'
import { NaiveList } from '../naive-list.ts'

const head = [job, begin('Head off')]
const bolts = [...head, off(8, 'head bolts'), end]
const lines = (...commands: Command[]) => shopping(play(commands).state)
const judged = (piece: PieceId): Command => ({
  do: 'judge',
  pieces: [piece],
  verdict: 'replace',
  reason: 'worn',
})

describe('what must be bought', () => {
  test('nothing, while all that came off can go back', () => {
    expect(lines(...bolts)).toEqual([])
  })

  test('what is broken, lost and was never there, with the arithmetic', () => {
    const [line] = lines(
      ...head,
      off(6, 'head bolts', { should: 8, broken: { kind: 'stripped', count: 1 } }),
      move('p1', at('lost'), { count: 2, reason: 'fell' }),
    )
    expect(line).toMatchObject({
      group: 'broken',
      piece: 'p1',
      count: 5,
      needed: 5,
      parts: [
        { why: 'broken', count: 1 },
        { why: 'lost', count: 2 },
        { why: 'missing', count: 2 },
      ],
    })
  })

  test('each position of a single-use set by itself, until new ones are here', () => {
    const seals = [...head, set('stem seals', ['I1', 'I2']), end]
    const used = {
      ...seals[2],
      item: { ...(seals[2] as never as { item: object }).item, singleUse: true },
    } as Command
    const story = [seals[0], seals[1], used, seals[3]] as Command[]
    expect(lines(...story)).toMatchObject([
      { group: 'single-use', piece: 'p1', count: 1 },
      { group: 'single-use', piece: 'p2', count: 1 },
    ])
    expect(lines(...story, bought(1, 'p1'))).toMatchObject([{ piece: 'p2', count: 1 }])
  })

  test('less what is ordered and still to come; what went back is to come again, what was cancelled is not', () => {
    const used = [...head, off(8, 'head bolts', { singleUse: true }), end]
    const six = [...used, ordered({ piece: 'p1', name: 'head bolts', count: 6 })]
    expect(lines(...six)).toMatchObject([{ count: 2, needed: 8, ordered: 6 }])
    expect(lines(...six, arrived('o1', 4))).toMatchObject([{ piece: 'p2', count: 2, needed: 4, ordered: 2 }])
    expect(lines(...six, arrived('o1', 4), sentBack('o1', 3))).toMatchObject([
      { count: 2, needed: 7, ordered: 5 },
    ])
    expect(lines(...six, arrived('o1', 4), cancelled('o1'))).toMatchObject([
      { count: 4, needed: 4, ordered: 0 },
    ])
  })

  test('what is put on once for each name, and no more once a tube was bought', () => {
    const put = (name: string, amount?: string): Command => ({
      do: 'set-consumable',
      step: 1,
      kind: 'sealant',
      name,
      amount,
    })
    const two = [...bolts, put('grey sealant', '1 tube'), put('Grey sealant', '10 ml'), put('thread lock')]
    expect(lines(...two)).toMatchObject([
      {
        group: 'put-on',
        name: 'grey sealant',
        count: 1,
        amounts: ['1 tube', '10 ml'],
        consumables: ['s1', 's2'],
      },
      { group: 'put-on', name: 'thread lock', count: 1, amounts: [] },
    ])
    const some = [...two, ordered({ name: 'grey sealant', count: 1 })]
    expect(lines(...some)).toMatchObject([{ name: 'thread lock' }])
    expect(lines(...some, arrived('o1'))).toMatchObject([{ name: 'thread lock' }])
  })

  test('fluids by name, in litres: what came out, less what was bought and is not poured in yet', () => {
    const story = [...head, drained('coolant', 2.1), drained('Coolant', 0.7), drained('oil', 1), end]
    expect(lines(...story)).toMatchObject([
      { group: 'fluid', name: 'coolant', count: 2.8, unit: 'L' },
      { name: 'oil', count: 1 },
    ])
    const can = [...story, ordered({ name: 'coolant', count: 2, unit: 'L' })]
    expect(lines(...can)).toMatchObject([{ name: 'coolant', count: 0.8, ordered: 2 }, { name: 'oil' }])
    const here = [...can, arrived('o1', 1.5)]
    expect(lines(...here)).toMatchObject([{ count: 0.8, ordered: 0.5, here: 1.5 }, { name: 'oil' }])
    // What was filled in took what was here.
    expect(lines(...here, look(1), take(1), filled('f2', 0.7))).toMatchObject([
      { needed: 2.1, ordered: 0.5, here: 0.8, count: 0.8 },
      { name: 'oil' },
    ])
  })

  test('what is wanted by hand, until it is ordered', () => {
    const grease = [job, wanted({ name: 'grease', count: 2, unit: 'tubes' })]
    expect(lines(...grease)).toMatchObject([{ group: 'wanted', order: 'o1', count: 2, unit: 'tubes' }])
    expect(lines(...grease, changed('o1', { ordered: true }))).toEqual([])
    expect(lines(...grease, cancelled('o1'))).toEqual([])
  })

  test('notes about a piece go on to the one that takes its home', () => {
    const story = [...bolts, { do: 'note-part', piece: 'p1', partNo: '11-204' } as const, judged('p1')]
    expect(lines(...story)).toMatchObject([{ piece: 'p1', partNo: '11-204', count: 8 }])
    expect(lines(...story, bought(6, 'p1', true))).toMatchObject([
      { piece: 'p2', partNo: '11-204', count: 2 },
    ])
  })
})

describe('the list of a generated job', () => {
  test('is the one that somebody makes who counts every single thing', () => {
    const acts = fc.array(fc.tuple(fc.nat(15), fc.nat(40), fc.integer({ min: 1, max: 5 })), {
      minLength: 15,
      maxLength: 40,
    })
    fc.assert(
      fc.property(acts, (some) => {
        const { state, naive } = told(some)
        expect(new Set(shopping(state).map(asLine))).toEqual(naive.lines())
      }),
      { seed: 20261130, numRuns: 150 },
    )
  })
})

/** A job of the acts that are allowed where they come. */
function told(acts: readonly (readonly [number, number, number])[]): { state: State; naive: NaiveList } {
  const start = play([job, begin('Engine off'), drained('coolant', 2.5), drained('oil', 4)])
  const naive = new NaiveList()
  for (const entry of start.entries) naive.read(entry)
  const { entries } = start
  let { state } = start
  for (const [kind, which, count] of acts) {
    const command = commandOf(state, kind, which, count)
    const decision = command && decide(state, command)
    if (!decision?.ok) continue
    const n = entries.length + 1
    const written = { v: 1, n, at: '2026-05-02T09:00:00.000Z', id: `e${n}`, ...decision.body }
    const entry = JSON.parse(JSON.stringify(written)) as Entry
    entries.push(entry)
    state = foldOn(state, entries, [entry])
    naive.read(entry)
  }
  return { state, naive }
}

function commandOf(state: State, kind: number, which: number, count: number): Command | null {
  const pieces = [...state.ledger.accounts.keys()]
  const orders = [...state.orders.values()]
  const pick = (some: typeof orders): OrderId => some[which % Math.max(1, some.length)]?.id ?? 'o0'
  const piece: PieceId = pieces[which % Math.max(1, pieces.length)] ?? 'p0'
  const order = pick(orders)
  const open = pick(orders.filter((each) => each.arrived < each.count))
  const here = pick(orders.filter(({ arrived: came, returned }) => came > returned))
  const kinds: (Command | null)[] = [
    off(count, `bolts ${which}`, { should: count + (which % 3), singleUse: which % 2 === 0 }),
    set(`caps ${which}`, ['I1', 'I2', 'I3'].slice(0, count)),
    off(1, `pump ${which}`, { kind: 'part', singleUse: which % 4 === 0 }),
    move(piece, at('lost'), { count, reason: 'fell' }),
    move(piece, at('scrap'), { count }),
    judged(piece),
    { do: 'leave-off', piece, count: 1, reason: 'not needed' },
    bought(count, piece, which % 3 === 0),
    ordered({ piece, name: `for ${piece}`, count }),
    wanted({ name: `thing ${which}`, count }),
    which % 3 === 0 ? arrived(open, count + 1, 1) : arrived(open, which % 3 === 1 ? 1 : undefined),
    which % 3 === 0 ? cancelled(order) : sentBack(here, which % 3 === 1 ? 1 : undefined),
    kit(`kit ${which}`, [[piece, pieces[0] ?? piece], 'some', count], [[], 'others', 1]),
    { do: 'set-consumable', step: 1, kind: 'sealant', name: `tube ${which % 3}` },
    which % 2 === 0 ? ordered({ name: `tube ${which % 3}`, count: 1 }) : move(piece, bench, { count }),
    which % 3 === 0 ? look(1) : which % 3 === 1 ? take(1) : fitted(piece),
  ]
  return kinds[kind] ?? null
}

function asLine({ piece, order, name, count, unit }: ShoppingLine): string {
  if (piece !== undefined && order === undefined) return `${piece} ${count}`
  if (order !== undefined) return `${order} ${count}`
  return unit === undefined ? name : `${name} ${count} ${unit}`
}
