import type { Command } from '../../src/journal/command.ts'
import { begin, bench, end, job, off } from './commands.ts'
import type { LeftoverCase } from './leftovers.ts'
import type { ReasonCase } from './reasons.ts'

// The day of these stories is 2 May 2026.

const apart = [job, begin('Seat off'), off(1, 'rocker', { kind: 'part' }, bench), off(4, 'seat bolts'), end]
const sent: Command = {
  do: 'send-out',
  to: 'Miller',
  due: '2026-05-09',
  pieces: [{ piece: 'p1' }, { piece: 'p2', count: 2 }],
}
const lent: Command = { do: 'send-out', to: 'job 12, Red twin', job: 12, pieces: [{ piece: 'p1' }] }
const back = (...pieces: { piece: 'p1' | 'p2'; count?: number }[]): Command => ({
  do: 'come-back',
  outing: 'b1',
  into: bench,
  ...(pieces.length > 0 && { pieces }),
})

/** Why a step waits for what went out of the house. */
export const outingAwayCases = [
  {
    given: [...apart, sent],
    gate: 'start',
    step: 1,
    says: [
      '1 × rocker is out, at Miller (b1) since 2 May, due 9 May: once back, "came back p1".',
      '2 × seat bolts are out, at Miller (b1) since 2 May, due 9 May: once back, "came back p2".',
    ],
  },
  {
    given: [...apart, lent],
    gate: 'start',
    step: 1,
    says: ['1 × rocker is out, lent to job 12, Red twin (b1) since 2 May: once back, "came back b1".'],
  },
] satisfies ReasonCase[]

export const outingReasons = {
  'out-unanswered': [
    {
      given: [...apart, sent, back()],
      gate: 'start',
      step: 1,
      says: [
        'b1 is back from Miller, and nobody has said what was taken out there of 1 × rocker and 2 × seat bolts: look, then "took out b1: nothing" or "took out b1: ...".',
      ],
    },
  ],
} satisfies Record<string, ReasonCase[]>

export const outingLeftovers = {
  'out-unanswered': [
    {
      given: [...apart, sent, back()],
      says: [
        'b1 is back from Miller, and nobody has said what was taken out there of 1 × rocker and 2 × seat bolts: to be done before the first start.',
        '> Look, then "took out b1: nothing" or "took out b1: ...".',
      ],
    },
  ],
} satisfies Record<string, LeftoverCase[]>
