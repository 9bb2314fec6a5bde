import type { Command } from '../../../src/journal/command.ts'
import { begin, end, job, off } from '../../errors/commands.ts'
import { arrived, cancelled, changed, kit, ordered, sentBack, wanted } from '../../errors/order-commands.ts'

const bolts: Command[] = [job, begin('Head off'), off(8, 'head bolts', { singleUse: true }), end]
const eight = [...bolts, ordered({ piece: 'p1', name: 'head bolts', count: 8 })]
const price = { minor: 320, currency: 'EUR', typed: '3.20 EUR' }

/** What is ordered, as the history tells it. */
export const orderEntries = {
  'order-lined': [
    {
      story: [
        ...bolts,
        { do: 'note-part', piece: 'p1', partNo: '11-204' },
        ordered({
          piece: 'p1',
          name: 'head bolts',
          count: 8,
          price,
          source: 'corner shop',
          due: '2026-12-04',
        }),
      ],
      says: 'ordered: o1, 8 × head bolts, number 11-204, 3.20 EUR each, from corner shop, due 4 Dec',
    },
    {
      story: [job, wanted({ name: 'grease', count: 2, unit: 'tubes', price: { ...price, inAll: true } })],
      says: 'to buy: o1, 2 tubes grease, 3.20 EUR in all',
    },
  ],
  'order-changed': [
    {
      story: [
        job,
        wanted({ name: 'grease', count: 2, unit: 'tubes' }),
        changed('o1', { ordered: true, count: 3, due: '2027-01-15' }),
      ],
      says: 'o1, 3 tubes grease: ordered, 3 tubes of it, due 15 Jan 2027',
    },
    {
      story: [...eight, cancelled('o1')],
      says: 'o1, 8 × head bolts: cancelled, because the old ones will do',
    },
    { story: [...eight, changed('o1', {})], says: 'o1, 8 × head bolts: as before' },
  ],
  'order-returned': [
    {
      story: [...eight, arrived('o1'), sentBack('o1', 2)],
      says: 'sent back: 2 of o1, 8 × head bolts, because too short',
    },
  ],
  'part-noted': [
    {
      story: [...bolts, { do: 'note-part', piece: 'p1', partNo: '11-204', price, source: 'corner shop' }],
      says: 'to buy head bolts: number 11-204, 3.20 EUR each, from corner shop',
    },
  ],
} satisfies Record<string, { story: Command[]; says: string }[]>

/** What arrives, as the history tells it. */
export const arrivalEntries = [
  {
    story: [...eight, arrived('o1', 5)],
    says: 'arrived: 5 of o1, 8 × head bolts: 5 × head bolts, onto the bench, in place of the old',
  },
  {
    story: [...eight, arrived('o1', 10, 2)],
    says: 'arrived: 10 of o1, 8 × head bolts: 8 × head bolts, onto the bench; 2 × head bolts, to the spares, in place of the old',
  },
  {
    story: [job, ordered({ name: 'oil', count: 2, unit: 'L' }), arrived('o1', 1.5)],
    says: 'arrived: 1.5 L of o1, 2 L oil',
  },
  {
    story: [...bolts, kit('top end', [['p1'], 'head bolts', 6], [[], 'O-rings', 4])],
    says: 'kit counted in, top end: 6 × head bolts (2 short) and 4 × O-rings (spare, for no home waits for it): 6 × head bolts, onto the bench; 4 × O-rings, to the spares',
  },
]
