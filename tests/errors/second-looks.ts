import type { Command } from '../../src/journal/command.ts'
import { begin, done, end, fitted, job, off, tightening, torque, turn } from './commands.ts'
import type { LeftoverCase } from './leftovers.ts'
import type { ReasonCase } from './reasons.ts'

// A critical step that is done, beneath another: who did it has said so, and nobody else has looked.

const story: Command[] = [
  job,
  begin('Guard off'),
  off(2, 'guard screws'),
  begin('Gear off'),
  off(2, 'gear bolts'),
  end,
  tightening('p2', torque),
  { do: 'change-step', step: 2, critical: { afterMinutes: 90 } },
  fitted('p2'),
  turn(),
  turn(),
  done(2),
]

export const secondLookReasons = {
  'second-due': [
    {
      given: story,
      gate: 'start',
      step: 1,
      says: [
        'Step 2, Gear, is critical, and nobody has seen again gear bolts: "seen p2: ..." with what was seen, by somebody else, or by the same 1 h 30 min after the work and from another side.',
        'Step 2, Gear, is critical, and nobody has seen again t1 (Gear: gear bolts): "seen t1: ..." with what was seen, by somebody else, or by the same 1 h 30 min after the work and from another side.',
      ],
    },
  ],
} satisfies Record<string, ReasonCase[]>

export const secondLookLeftovers = {
  'second-due': [
    {
      given: story,
      says: [
        'Step 2, Gear, is critical, and nobody has seen again gear bolts: to be done before the first start.',
        '> "seen p2: ..." with what was seen, by somebody else, or by the same 1 h 30 min after the work and from another side.',
        'Step 2, Gear, is critical, and nobody has seen again t1 (Gear: gear bolts): to be done before the first start.',
        '> "seen t1: ..." with what was seen, by somebody else, or by the same 1 h 30 min after the work and from another side.',
      ],
    },
  ],
} satisfies Record<string, LeftoverCase[]>
