import type { Command } from '../../../src/journal/command.ts'
import { begin, bench, bought, end, fitted, job, off, take } from '../../errors/commands.ts'
import { alike, found, on, over } from '../../errors/replacing-commands.ts'

const pump: Command[] = [job, begin('Pump off'), off(1, 'water pump', { kind: 'part' }, bench), end]
const studs: Command[] = [...pump, on('p1', 3, 'pump studs', 'M6x25')]
const fresh: Command[] = [...studs, bought(1, 'p1', true)]

/** What takes the place of an old piece, and what sits on one, as the history tells it. */
export const replacingEntries = {
  carrying: [{ story: studs, says: 'on water pump: 3 × pump studs M6x25' }],
  compared: [
    {
      story: [
        ...fresh,
        found(
          'p3',
          { feature: 'ports', how: 'alike' },
          { feature: 'studs', how: 'differs', says: '2 mm longer' },
        ),
      ],
      says: 'compared: water pump with the old one, p1: ports alike, studs different but right (2 mm longer); not done yet',
    },
    {
      story: [...fresh, over('p1', 'p3'), alike('p3')],
      says: 'compared: water pump with the old one, p1: all alike; it is right; 1 × water pump from the bench, to scrap',
    },
    {
      story: [...fresh, { do: 'compare', piece: 'p3', features: [], rest: 'wrong', says: 'turned flange' }],
      says: 'compared: water pump with the old one, p1: wrong (turned flange); it is wrong',
    },
  ],
} satisfies Record<string, { story: Command[]; says: string }[]>

/** Entries of other kinds that say so. */
export const replacingMoves = {
  moved: [
    {
      story: [...fresh, over('p1', 'p3')],
      says: 'moved: 3 × pump studs M6x25 from water pump p1, onto water pump p3',
    },
  ],
  fitted: [
    {
      story: [...studs, take(1), fitted('p1')],
      says: 'fitted: 1 × water pump from the bench; 3 × pump studs M6x25 from water pump p1',
    },
    {
      story: [
        job,
        begin('Seat off'),
        off(4, 'seat bolts', { singleUse: true }),
        end,
        bought(4, 'p1'),
        take(1),
        fitted('p2'),
      ],
      says: 'fitted: 4 × seat bolts from the bench; used up: 4 × seat bolts from bag 1, to scrap',
    },
  ],
} satisfies Record<string, { story: Command[]; says: string }[]>
