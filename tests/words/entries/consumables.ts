import type { Command } from '../../../src/journal/command.ts'
import { begin, drained, end, job, off } from '../../errors/commands.ts'

const pump: Command[] = [job, begin('Pump off'), drained('oil', 1), off(2, 'pump bolts'), end]
const sealant: Command = {
  do: 'set-consumable',
  step: 1,
  kind: 'sealant',
  name: 'grey sealant on the pump face',
  workMinutes: 5,
  cureMinutes: 1440,
  before: ['f1', 'start'],
}

/** What is put on, as the history tells it. */
export const consumableEntries = {
  'consumable-set': [
    {
      story: [...pump, sealant],
      says: 's1, to put on in step 1, Pump: grey sealant on the pump face, together within 5 min, sets 24 h before the filling of oil (1 L drained) and the first start',
    },
    {
      story: [
        ...pump,
        {
          do: 'set-consumable',
          step: 1,
          kind: 'gasket',
          name: 'pump gasket',
          side: 'TOP',
          expires: '2030-06-30',
          amount: '1 tube',
        },
      ],
      says: 's1, to put on in step 1, Pump: pump gasket, TOP up, use by 2030-06-30, 1 tube of it',
    },
  ],
  'consumable-dropped': [
    {
      story: [...pump, sealant, { do: 'drop-consumable', consumable: 's1', reason: 'a gasket is used' }],
      says: 's1 is not put on, because a gasket is used',
    },
  ],
  applied: [
    {
      story: [...pump, { ...sealant, before: undefined } as Command, { do: 'apply', consumable: 's1' }],
      says: 'put on: s1, grey sealant on the pump face, together within 5 min, sets 24 h before the first start',
    },
  ],
} satisfies Record<string, { story: Command[]; says: string }[]>
