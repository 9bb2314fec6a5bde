import type { Command } from '../../../src/journal/command.ts'
import { begin, job, merged, off } from '../../errors/commands.ts'

const seat: Command[] = [job, begin('Seat off'), off(8, 'seat bolts')]

export const mergingEntries = {
  merged: [
    { story: [...seat, merged()], says: 'merged with the copy /media/stick/twin: 2 entries taken over' },
    {
      story: [
        ...seat,
        {
          ...merged('came off: 2 × pump bolts', 'cleared'),
          taken: 1,
          kept: 'journal.merged-1',
          renumbered: [{ there: 2, here: 5 }],
        },
      ],
      says: 'merged with the copy /media/stick/twin: 1 entry taken over; left out: w1 and w2; numbers: 2 there is 5 here; its journal is kept as journal.merged-1',
    },
  ],
  'left-out-settled': [
    {
      story: [
        ...seat,
        merged('came off: 2 × pump bolts'),
        { do: 'settle-left-out', leftOut: 'w1', how: 'they are in the pump' },
      ] satisfies Command[],
      says: 'w1 settled, which said came off: 2 × pump bolts: they are in the pump',
    },
  ],
}
