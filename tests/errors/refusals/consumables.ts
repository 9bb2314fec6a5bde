import type { Command } from '../../../src/journal/command.ts'
import type { Cases } from '../case.ts'
import { begin, drained, end, fitted, job, off, take } from '../commands.ts'

// Each command of a story takes a minute, on 2 May 2026. The times are invented.

const pump: Command[] = [job, begin('Pump off'), drained('oil', 1), off(2, 'pump bolts'), end]
const sealant = (more: Partial<Extract<Command, { do: 'set-consumable' }>> = {}): Command => ({
  do: 'set-consumable',
  step: 1,
  kind: 'sealant',
  name: 'grey sealant',
  ...more,
})
const applied: Command = { do: 'apply', consumable: 's1' }
const oil: Command = { do: 'fill', fluid: 'f1', litres: 1, typed: '1 L' }
const oneBolt: Command = { do: 'fit', fittings: [{ piece: 'p1', count: 1 }] }

export const consumableCases = {
  'put-on-already': [
    {
      given: [...pump, sealant(), applied, fitted('p1')],
      when: applied,
      says: [
        's1, grey sealant, is on already for 1 min.',
        '> Go on with the step; if it has to come off, "reopen 1 because ..." opens the step again, then clean it off and put it on anew.',
      ],
    },
    {
      given: [
        ...pump,
        sealant({ workMinutes: 1 }),
        applied,
        oneBolt,
        { do: 'note', kind: 'note', text: 'a call' },
      ],
      when: applied,
      says: [
        's1, grey sealant, has been on for 2 min: its working time ran out before all was together.',
        '> "reopen 1 because ..." opens the step again, then clean it off and put it on anew.',
      ],
    },
    {
      given: [...pump, sealant(), applied],
      when: { do: 'drop-consumable', consumable: 's1', reason: 'so' },
      says: [
        's1, grey sealant, is on already.',
        '> Go on with the step; if it has to come off, "reopen 1 because ..." opens the step again, then clean it off and put it on anew.',
      ],
    },
  ],
  'out-of-date': [
    {
      given: pump,
      when: sealant({ expires: '2026-05-01' }),
      says: [
        'Grey sealant was to be used by 1 May, 1 day ago.',
        '> Take a fresh one, and say the date that stands on it.',
      ],
    },
    {
      given: pump,
      when: sealant({ expires: '2026-03-31' }),
      says: [
        'Grey sealant was to be used by 31 Mar, 32 days ago.',
        '> Take a fresh one, and say the date that stands on it.',
      ],
    },
    {
      given: pump,
      and: {
        type: 'consumable-set',
        consumable: {
          id: 's1',
          step: 1,
          kind: 'sealant',
          name: 'grey sealant',
          before: [],
          expires: '2025-12-31',
        },
      },
      when: applied,
      says: [
        'Grey sealant was to be used by 31 Dec 2025, 122 days ago.',
        '> Take a fresh one: "drop s1 because ...", then ask for it anew with its own date.',
      ],
    },
  ],
  'not-to-be-filled': [
    {
      given: [...pump, sealant({ cureMinutes: 60, before: ['f1'] }), take(1)],
      when: oil,
      says: [
        'Oil (1 L drained) may not be filled yet.',
        '  s1, grey sealant, not put on: "applied s1" when it is on.',
        '> Fill it when that is over.',
      ],
    },
    {
      given: [...pump, sealant({ cureMinutes: 60, before: ['f1'] }), applied, fitted('p1')],
      when: oil,
      says: [
        'Oil (1 L drained) may not be filled yet.',
        '  s1, grey sealant, must set, 1 h to go: wait, as its maker says, or "override s1 because ...".',
        '> Fill it when that is over.',
      ],
    },
    {
      given: [
        job,
        begin('Radiator off'),
        drained('coolant', 2),
        end,
        begin('Thermostat off', []),
        off(2, 'thermostat bolts'),
        end,
        { ...sealant({ cureMinutes: 60, before: ['f1'] }), step: 2 } as Command,
        { do: 'apply', consumable: 's1' },
        take(1),
      ],
      when: oil,
      says: [
        'Coolant (2 L drained) may not be filled yet.',
        '  Step 2, Thermostat, comes before and is under way: "done 2" when complete.',
        '  s1, grey sealant, must set, 59 min to go: wait, as its maker says, or "override s1 because ...".',
        '> Fill it when that is over.',
      ],
    },
  ],
} satisfies Record<string, Cases>
