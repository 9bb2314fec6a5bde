import type { Command } from '../../../src/journal/command.ts'
import { begin, done, end, fitted, job, marked, off } from '../../errors/commands.ts'

const critical = (afterMinutes: number): Command => ({
  do: 'change-step',
  step: 1,
  critical: { afterMinutes },
})
const gear = [job, begin('Gear off'), off(2, 'gear bolts'), marked('dot up'), end]
// Each entry of a story is a minute after the one before: the last one looks a minute after the work.
const seen = [
  ...gear,
  critical(1),
  fitted('p1'),
  { do: 'confirm', mark: 'm1' },
  done(1),
  critical(1),
] as Command[]

/** A second look, as the history tells it. */
export const secondLookEntries = {
  'seen-again': [
    {
      story: [...seen, { do: 'see-again', line: 'p1', says: 'paint stripes in line' }],
      says: 'seen again, step 1, Gear: gear bolts: paint stripes in line',
    },
    {
      story: [...seen, { do: 'see-again', line: 'm1', says: 'the dot is up' }],
      says: 'seen again, step 1, Gear: mark m1 (dot up): the dot is up',
    },
  ],
} satisfies Record<string, { story: Command[]; says: string }[]>

/** How a step is made critical, and no more. */
export const criticalEntries: { story: Command[]; says: string }[] = [
  {
    story: [...gear, critical(90)],
    says: 'step 1 changed: critical, seen again by somebody else or 1 h 30 min later',
  },
  {
    story: [...gear, critical(90), { do: 'change-step', step: 1, critical: null }],
    says: 'step 1 changed: not critical',
  },
]
