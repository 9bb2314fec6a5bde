import type { Command } from '../../src/journal/command.ts'
import { begin, done, drained, end, fitted, job, off } from './commands.ts'
import type { LeftoverCase } from './leftovers.ts'
import type { ReasonCase } from './reasons.ts'

// Each command of a story takes a minute. The times are invented.

const sealant = (more: Partial<Extract<Command, { do: 'set-consumable' }>>): Command => ({
  do: 'set-consumable',
  step: 1,
  kind: 'sealant',
  name: 'grey sealant on the pump face',
  ...more,
})
const applied: Command = { do: 'apply', consumable: 's1' }

export const consumableReasons = {
  'consumable-due': [
    {
      given: [job, begin('Pump off'), off(2, 'pump bolts'), end, sealant({}), fitted('p1')],
      gate: 'finish',
      step: 1,
      says: ['s1, grey sealant on the pump face, not put on: "applied s1" when it is on.'],
    },
  ],
  'worked-late': [
    {
      given: [
        job,
        begin('Pump off'),
        off(2, 'pump bolts'),
        end,
        sealant({ workMinutes: 3 }),
        applied,
        { do: 'fit', fittings: [{ piece: 'p1', count: 1 }] },
        { do: 'note', kind: 'note', text: 'the phone rang' },
        { do: 'note', kind: 'note', text: 'and once more' },
        { do: 'note', kind: 'note', text: 'and again' },
        fitted('p1'),
      ],
      gate: 'finish',
      step: 1,
      says: [
        's1, grey sealant on the pump face, the joint was together 2 min too late: "reopen 1 because ...", clean it off, then "applied s1" when it is on anew.',
      ],
    },
  ],
  curing: [
    {
      given: [
        job,
        begin('Guard off'),
        off(2, 'guard bolts'),
        begin('Pump off'),
        off(2, 'pump bolts'),
        end,
        { ...sealant({ cureMinutes: 1440, before: [1] }), step: 2 } as Command,
        applied,
        fitted('p2'),
        done(2),
      ],
      gate: 'start',
      step: 1,
      says: [
        's1, grey sealant on the pump face, must set, 23 h 59 min to go: wait, as its maker says, or "override s1 because ...".',
      ],
    },
    {
      given: [
        job,
        begin('Pump off'),
        drained('oil', 1),
        off(2, 'pump bolts'),
        end,
        sealant({ cureMinutes: 60, before: ['f1'] }),
        applied,
        fitted('p1'),
      ],
      gate: 'finish',
      step: 1,
      says: [
        's1, grey sealant on the pump face, must set, 1 h to go: wait, as its maker says, or "override s1 because ...".',
        'Oil (1 L drained) not filled: "fill oil ..." with the amount.',
      ],
    },
  ],
} satisfies Record<string, ReasonCase[]>

export const consumableLeftovers = {
  'consumable-due': [
    {
      given: [job, begin('Pump off'), off(2, 'pump bolts'), end, sealant({})],
      says: [
        's1, grey sealant on the pump face, not put on: to be done before the first start.',
        '> "applied s1" when it is on.',
      ],
    },
  ],
  'worked-late': [
    {
      given: consumableReasons['worked-late'][0]?.given ?? [],
      says: [
        's1, grey sealant on the pump face, the joint was together 2 min too late: to be done before the first start.',
        '> "reopen 1 because ...", clean it off, then "applied s1" when it is on anew.',
      ],
    },
  ],
  curing: [
    {
      given: [
        job,
        begin('Pump off'),
        off(2, 'pump bolts'),
        end,
        sealant({ cureMinutes: 1440 }),
        applied,
        fitted('p1'),
        done(1),
      ],
      says: [
        's1, grey sealant on the pump face, must set, 23 h 59 min to go: to be done before the first start.',
        '> Wait, as its maker says, or "override s1 because ...".',
      ],
    },
  ],
} satisfies Record<string, LeftoverCase[]>
