import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { Gates } from '../../src/plan/gates.ts'
import { blockedByOrder } from '../../src/session/blocked-by-order.ts'
import { orderHeeds } from '../../src/session/order-heeds.ts'
import { shoppingView } from '../../src/session/shopping-view.ts'
import { waitsOf } from '../../src/session/waits.ts'
import { begin, bought, end, job, off } from '../errors/commands.ts'
import { arrived, cancelled, kit, ordered, wanted } from '../errors/order-commands.ts'
import { play } from '../errors/play.ts'

const priced = (minor: number, currency: string) => ({ minor, currency, typed: `${minor / 100} ${currency}` })
const bolts = { piece: 'p1', name: 'head bolts', count: 8 } as const
const engine: Command[] = [
  job,
  begin('Cover off'),
  off(4, 'cover bolts'),
  end,
  begin('Head off'),
  off(8, 'head bolts', { singleUse: true }),
  end,
]
const view = (...commands: Command[]) => shoppingView(play(commands).state)

describe('what it comes to', () => {
  test('each price times its number, by currency, and how many lines have none', () => {
    const some = [
      job,
      wanted({ name: 'grease', count: 3, unit: 'tubes', price: priced(333, 'EUR') }),
      wanted({ name: 'washers', count: 10, price: { ...priced(250, 'EUR'), inAll: true } }),
      wanted({ name: 'oil', count: 4.5, unit: 'L', price: priced(899, 'USD') }),
      wanted({ name: 'thread lock', count: 1, price: priced(120, '') }),
      wanted({ name: 'fuse', count: 2, price: { minor: 150, currency: 'JPY', typed: '150 JPY' } }),
      wanted({ name: 'paper', count: 1 }),
    ]
    const { toBuy, ordered: all } = view(...some)
    // 3 x 3.33 + 2.50 = 12.49; 4.5 x 8.99 = 40.455, to the nearest cent 40.46; a yen has no smaller coin (ISO 4217)
    expect(toBuy).toEqual({ sums: ['12.49 EUR', '40.46 USD', '1.20', '300 JPY'], unpriced: 1 })
    expect(all).toEqual({ sums: [], unpriced: 0 })
  })

  test('what was ordered is a sum of its own, without what was cancelled', () => {
    const some = [
      job,
      ordered({ name: 'oil', count: 2, unit: 'L', price: priced(899, 'USD') }),
      ordered({ name: 'paper', count: 1, price: priced(500, 'USD') }),
      cancelled('o2'),
    ]
    expect(view(...some)).toMatchObject({
      lines: [],
      toBuy: { sums: [], unpriced: 0 },
      ordered: { sums: ['17.98 USD'], unpriced: 0 },
      orders: [
        { order: { id: 'o1' }, standing: 'ordered', open: 2, here: 0 },
        { order: { id: 'o2' }, standing: 'cancelled', open: 0, here: 0 },
      ],
    })
  })
})

describe('what a line holds up', () => {
  const late = [...engine, ordered({ ...bolts, piece: 'p2' })]
  const blocked = (commands: Command[]) => {
    const { state } = play(commands)
    const line = state.orders.get('o1')
    return line && blockedByOrder(state, line)
  }

  test('the step of its piece and all that is built on it', () => {
    expect(blocked(late)).toEqual([1, 2])
  })

  test('a step waits for the rest of a line that took the place of the old in part', () => {
    const { state } = play([
      ...engine,
      ordered({ ...bolts, piece: 'p2', due: '2026-06-01' }),
      arrived('o1', 5),
    ])
    expect(waitsOf(state, new Gates(state), 2)).toEqual([
      { piece: 'p3', by: 'o1', due: '2026-06-01', isLate: false },
    ])
  })

  test('nothing once it is here, is cancelled, or others came', () => {
    expect(blocked([...late, arrived('o1')])).toEqual([])
    expect(blocked([...late, cancelled('o1')])).toEqual([])
    expect(blocked([...late, bought(8, 'p2')])).toEqual([])
    expect(blocked([job, ordered({ name: 'oil', count: 1, unit: 'L' })])).toEqual([])
  })
})

describe('what is worth a look when new pieces come', () => {
  const heeds = (...commands: Command[]) => {
    const { state, entries } = play(commands)
    return orderHeeds(state, entries.at(-1) as never)
  }
  const line = ordered({ ...bolts, piece: 'p2' })

  test('a line that nothing waits for any more', () => {
    expect(heeds(...engine, line, bought(8, 'p2'))).toEqual([{ heed: 'order-unneeded', orders: ['o1'] }])
    expect(heeds(...engine, line, kit('top end', [['p2'], 'head bolts', 8]))).toEqual([
      { heed: 'order-unneeded', orders: ['o1'] },
    ])
    expect(heeds(...engine, line, bought(6, 'p2'))).toEqual([])
    expect(heeds(...engine, line, arrived('o1'))).toEqual([])
  })

  test('more ordered than is lacking, by all lines together', () => {
    const some = [...engine, ordered({ ...bolts, piece: 'p2', count: 6 })]
    expect(heeds(...some)).toEqual([])
    expect(heeds(...some, ordered({ ...bolts, piece: 'p2', count: 3 }))).toEqual([
      { heed: 'over-ordered', order: 'o2', piece: 'p2', open: 9, short: 8 },
    ])
    // A spare of what is not lacking is bought knowingly.
    expect(heeds(...engine, ordered({ piece: 'p1', name: 'cover bolts', count: 2 }))).toEqual([])
  })

  test('a kit that held too few', () => {
    expect(heeds(...engine, kit('top end', [['p2'], 'head bolts', 6]))).toEqual([
      { heed: 'kit-short', name: 'head bolts', count: 6, short: 2 },
    ])
  })
})
