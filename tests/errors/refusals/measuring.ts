import type { Cases } from '../case.ts'
import { job, measured } from '../commands.ts'

export const measuringCases = {
  'measurement-wrong': [
    {
      given: [job],
      when: measured('crank pin', []),
      says: ['A measurement has at least one reading.', '> Type what was read.'],
    },
    {
      given: [job],
      when: measured('crank pin', [Number.NaN]),
      says: ['A reading, a limit or a distance is no size that can be measured.', '> Type it again.'],
    },
    {
      given: [job],
      when: measured('crank pin', [1e12]),
      says: ['A reading, a limit or a distance is no size that can be measured.', '> Type it again.'],
    },
    {
      given: [job],
      when: measured('crank pin', [35.99], { typed: '36.02..35.98', leastMm: 36.02, mostMm: 35.98 }),
      says: ['The lower limit is above the upper one.', '> Look at the manual, and type the limits again.'],
    },
  ],
} satisfies Record<string, Cases>
