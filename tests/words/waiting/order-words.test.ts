import { describe, expect, test } from 'vitest'
import { hereOf, openOf, orderStanding } from '../../../src/plan/buying/order-lines.ts'
import type { OrderFacts } from '../../../src/plan/waiting/waiting-facts.ts'
import { amountOf, amountText, notesText, standingText } from '../../../src/words/waiting/order-words.ts'
import { totalsText, wantSum, wantText } from '../../../src/words/waiting/shopping-text.ts'
import { job } from '../../errors/commands.ts'
import { play } from '../../errors/play.ts'

// The clock of this job stands at 2 May 2026.
const { state } = play([job])

function said(more: Partial<OrderFacts>): string {
  const order: OrderFacts = {
    id: 'o1',
    name: 'head bolts',
    count: 8,
    ordered: true,
    since: '2026-04-20',
    arrived: 0,
    wrong: 0,
    returned: 0,
    cancelled: null,
    ...more,
  }
  const standing = orderStanding(order, state.clock.today)
  return standingText(state, { order, standing, open: openOf(order), here: hereOf(order) })
}

describe('how a line stands, in words', () => {
  test.each<[Partial<OrderFacts>, string]>([
    [{ ordered: false, since: null }, 'wanted, not ordered yet'],
    [{}, 'ordered 20 Apr'],
    [{ due: '2026-05-09' }, 'ordered 20 Apr, due 9 May'],
    [{ due: '2026-04-30' }, 'due 30 Apr, 2 days late'],
    [{ due: '2026-05-01', arrived: 5 }, 'due 1 May, 1 day late, 5 here, 3 to come'],
    [{ arrived: 5 }, 'partly here, 5 here, 3 to come'],
    [{ arrived: 8, wrong: 1 }, '1 wrong, to go back, 8 here, 1 to come'],
    [{ arrived: 8, returned: 2 }, '2 sent back, 2 to come'],
    [{ arrived: 8 }, 'all here'],
    [{ arrived: 10, returned: 2 }, 'all here, 2 sent back before'],
    [{ cancelled: 'too dear' }, 'cancelled, because too dear'],
    [{ cancelled: 'too dear', arrived: 3 }, 'cancelled, because too dear, 3 here'],
    [{ unit: 'L', count: 2.1, arrived: 1.5 }, 'partly here, 1.5 L here, 0.6 L to come'],
  ])('%j', (more, text) => {
    expect(said(more)).toBe(text)
  })
})

test('amounts and what is known about buying', () => {
  expect(amountOf(8, undefined, 'head bolts')).toBe('8 × head bolts')
  expect(amountOf(2.1, 'L', 'coolant')).toBe('2.1 L coolant')
  expect(amountText(0.30000000000000004, 'L')).toBe('0.3 L')
  const price = { minor: 320, currency: 'EUR', typed: '3.20 EUR' }
  expect(notesText({ partNo: '11-204', price, source: 'corner shop' })).toEqual([
    'number 11-204',
    '3.20 EUR each',
    'from corner shop',
  ])
  expect(notesText({ price: { ...price, inAll: true } })).toEqual(['3.20 EUR in all'])
  expect(notesText({})).toEqual([])
})

describe('a line of what to buy', () => {
  const line = { name: 'grey sealant', count: 1, needed: 1, ordered: 0, here: 0, parts: [], amounts: [] }

  test('what is put on, with the amounts that were said', () => {
    expect(wantText(state, { ...line, group: 'put-on' })).toBe('grey sealant')
    expect(wantText(state, { ...line, group: 'put-on', amounts: ['1 tube', '10 ml'] })).toBe(
      'grey sealant, 1 tube and 10 ml',
    )
  })

  test('its arithmetic, where the group does not say it all', () => {
    const parts = [
      { why: 'broken' as const, count: 2 },
      { why: 'missing' as const, count: 1 },
    ]
    expect(wantSum({ ...line, group: 'broken', needed: 3, parts })).toBe(
      '2 broken or scrapped and 1 never there: 3',
    )
    expect(wantSum({ ...line, group: 'broken', needed: 3, ordered: 1, parts: parts.slice(0, 1) })).toBe(
      '2 broken or scrapped: 3, less 1 ordered',
    )
    expect(wantSum({ ...line, group: 'fluid', unit: 'L', needed: 4, ordered: 1, here: 0.5 })).toBe(
      '4 L, less 1 L ordered and 0.5 L here',
    )
    expect(wantSum({ ...line, group: 'lost', parts: [{ why: 'lost', count: 1 }] })).toBe('')
  })

  test('what they come to', () => {
    expect(totalsText({ sums: ['1.20 EUR', '$4.50'], unpriced: 2 })).toBe(
      '1.20 EUR and $4.50; 2 lines without a price',
    )
    expect(totalsText({ sums: ['1.20 EUR'], unpriced: 0 })).toBe('1.20 EUR')
    expect(totalsText({ sums: [], unpriced: 1 })).toBe('1 line without a price')
  })
})
