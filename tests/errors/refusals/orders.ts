import type { Command } from '../../../src/journal/command.ts'
import type { Cases } from '../case.ts'
import { begin, end, job, off } from '../commands.ts'
import { arrived, cancelled, changed, kit, ordered, sentBack } from '../order-commands.ts'

const bolts = [job, begin('Head off'), off(8, 'head bolts', { singleUse: true }), end]
const eight = [...bolts, ordered({ piece: 'p1', name: 'head bolts', count: 8 })]
const set = [...bolts, ordered({ name: 'top end set', count: 1 })]
const setCounted = { ...kit('top end set', [['p1'], 'head bolts', 8]), order: 'o1' } as Command
const oil = [job, ordered({ name: 'oil', count: 2, unit: 'L' })]

export const orderCases = {
  'order-cancelled': [
    {
      given: [...eight, cancelled('o1')],
      when: arrived('o1'),
      says: [
        'o1, 8 × head bolts, was cancelled, because the old ones will do.',
        '> If it is wanted after all: "buy 8 p1".',
      ],
    },
    {
      given: [...oil, cancelled('o1')],
      when: changed('o1', { count: 3 }),
      says: [
        'o1, 2 L oil, was cancelled, because the old ones will do.',
        '> If it is wanted after all: "want 2 L oil".',
      ],
    },
    {
      given: [...set, cancelled('o1')],
      when: setCounted,
      says: [
        'o1, 1 × top end set, was cancelled, because the old ones will do.',
        '> If it is wanted after all: "want 1 top end set".',
      ],
    },
  ],
  'order-arrived': [
    {
      given: [...eight, arrived('o1')],
      when: arrived('o1'),
      says: [
        'o1, 8 × head bolts: all of it has arrived, and nothing is still to come.',
        '> If more came: "buy o1 9" first; what is not right goes back: "send back o1 because ...".',
      ],
    },
    {
      given: [...set, setCounted],
      when: setCounted,
      says: [
        'o1, 1 × top end set: all of it has arrived, and nothing is still to come.',
        '> If more came: "buy o1 2" first; what is not right goes back: "send back o1 because ...".',
      ],
    },
    {
      given: [...eight, arrived('o1')],
      when: cancelled('o1'),
      says: [
        'o1, 8 × head bolts: all of it has arrived, and nothing is still to come.',
        '> If more came: "buy o1 9" first; what is not right goes back: "send back o1 because ...".',
      ],
    },
  ],
  'more-than-ordered': [
    {
      given: [...eight, arrived('o1', 5)],
      when: arrived('o1', 5),
      says: [
        'o1, 8 × head bolts: 3 to come, 5 said to be here: 2 too many.',
        '> Count again; if they are wanted, "buy o1 10" first; if they stay as spares, "arrived o1 5 spare 2".',
      ],
    },
    {
      given: oil,
      when: arrived('o1', 2.5),
      says: [
        'o1, 2 L oil: 2 L to come, 2.5 L said to be here: 0.5 L too many.',
        '> Count again; if they are wanted, "buy o1 2.5" first; then say it again.',
      ],
    },
  ],
  'more-than-arrived': [
    {
      given: eight,
      when: sentBack('o1'),
      says: [
        'o1, 8 × head bolts: nothing of it is here, so nothing can go back.',
        '> "arrived o1" when it is here; if it is not wanted any more, "cancel o1 because ...".',
      ],
    },
    {
      given: [...eight, arrived('o1', 5), sentBack('o1', 2)],
      when: sentBack('o1', 4),
      says: ['o1, 8 × head bolts: 3 here, 4 to go back: 1 too many.', '> Say the number again.'],
    },
  ],
} satisfies Record<string, Cases>
