import type { Command } from '../../../src/journal/command.ts'
import { begin, bench, end, job, off } from '../../errors/commands.ts'

// The day of these stories is 2 May 2026.

const apart: Command[] = [
  job,
  begin('Seat off'),
  off(1, 'rocker', { kind: 'part' }, bench),
  off(4, 'seat bolts'),
  end,
]
const sent: Command = {
  do: 'send-out',
  to: 'Miller',
  why: 'skimming',
  due: '2026-05-09',
  expects: 'flat within 0.05',
  pieces: [{ piece: 'p1' }, { piece: 'p2', count: 2 }],
}
const back: Command = { do: 'come-back', outing: 'b1', into: bench }

/** What went out of the house and came back, as the history tells it. */
export const outingEntries = {
  'sent-out': [
    {
      story: [...apart, sent],
      says: 'out to Miller (b1): 1 × rocker and 2 × seat bolts, for skimming, due 9 May, expected: flat within 0.05',
    },
    {
      story: [
        ...apart,
        { do: 'send-out', to: 'job 12, Red twin', job: 12, pieces: [{ piece: 'p1' }], aside: ['p2'] },
      ],
      says: 'lent to job 12, Red twin (b1): 1 × rocker, left here: seat bolts',
    },
  ],
  'came-back': [
    {
      story: [...apart, sent, back],
      says: 'back from Miller (b1): 1 × rocker, 2 × seat bolts, onto the bench',
    },
    {
      story: [
        ...apart,
        sent,
        { ...back, into: { kind: 'new', container: 'bag' }, pieces: [{ piece: 'p1' }] },
      ],
      says: 'back from Miller (b1): 1 × rocker, into bag 2 (new)',
    },
    {
      story: [
        ...apart,
        sent,
        {
          ...back,
          result: 'skimmed by 0.1 mm',
          tookOut: {
            text: '2 plugs back, 1 pin not back',
            items: [
              { name: 'plugs', count: 2, back: true },
              { name: 'pin', count: 1, back: false },
            ],
          },
        },
      ],
      says: 'back from Miller (b1): 1 × rocker, 2 × seat bolts, onto the bench; skimmed by 0.1 mm; taken out there: 2 plugs back, 1 pin not back',
    },
    {
      story: [...apart, sent, back, { ...back, pieces: [], tookOut: { text: 'nothing', items: [] } }],
      says: 'at Miller (b1): taken out there: nothing',
    },
  ],
} satisfies Record<string, { story: Command[]; says: string }[]>
