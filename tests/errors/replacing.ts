import { begin, bench, bought, end, job, off } from './commands.ts'
import type { LeftoverCase } from './leftovers.ts'
import type { ReasonCase } from './reasons.ts'
import { alike, found, on } from './replacing-commands.ts'

const pump = [job, begin('Pump off'), off(1, 'water pump', { kind: 'part' }, bench), end]
const studs = [...pump, on('p1', 3, 'pump studs', 'M6x25')]
const turned = { feature: 'ports', how: 'wrong', says: 'turned by 90 deg' } as const

/** Why a step waits for what takes the place of an old piece. */
export const replacingReasonCases = {
  'compare-due': [
    {
      given: [...pump, bought(1, 'p1', true)],
      gate: 'start',
      step: 1,
      says: [
        'Water pump not compared with the old one, p1, on the bench: lay them side by side, then "compare p2: alike", or "compare p2" for what to look at.',
      ],
    },
  ],
  'compare-wrong': [
    {
      given: [...pump, bought(1, 'p1', true), found('p2', turned)],
      gate: 'start',
      step: 1,
      says: [
        'Water pump is wrong (ports: turned by 90 deg): "send back p2 because ...", and "new p2" when the right one is here.',
      ],
    },
  ],
  'left-on-old': [
    {
      given: [...studs, bought(1, 'p1', true), alike('p3', true)],
      gate: 'start',
      step: 1,
      says: [
        '3 × pump studs M6x25 are still on water pump p1, the old one: "move over from p1 to p3", or "new p2 instead".',
      ],
    },
  ],
} satisfies Record<string, ReasonCase[]>

/** What takes the place of an old piece, and holds the first start. */
export const replacingLeftoverCases = {
  'compare-due': [
    {
      given: [...pump, bought(1, 'p1', true)],
      says: [
        'Water pump not compared with the old one, p1, on the bench: belongs to Pump, step 1.',
        '> Lay them side by side, then "compare p2: alike", or "compare p2" for what to look at.',
      ],
    },
  ],
  'compare-wrong': [
    {
      given: [...pump, bought(1, 'p1', true), found('p2', turned)],
      says: [
        'Water pump is wrong (ports: turned by 90 deg): belongs to Pump, step 1.',
        '> "send back p2 because ...", and "new p2" when the right one is here.',
      ],
    },
  ],
} satisfies Record<string, LeftoverCase[]>
