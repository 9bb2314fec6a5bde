import type { Command } from '../../../src/journal/command.ts'
import type { Cases } from '../case.ts'
import { at, begin, bench, end, fitted, job, move, off } from '../commands.ts'

// The day of these stories is 2 May 2026.

type SendOut = Extract<Command, { do: 'send-out' }>
type ComeBack = Extract<Command, { do: 'come-back' }>

const rocker = off(1, 'rocker', { kind: 'part' }, bench)
const apart = [job, begin('Seat off'), rocker, off(4, 'seat bolts'), end]
const sent = (more: Partial<SendOut> = {}): Command => ({
  do: 'send-out',
  to: 'Miller',
  pieces: [{ piece: 'p1' }],
  ...more,
})
const back = (more: Partial<ComeBack> = {}): Command => ({
  do: 'come-back',
  outing: 'b1',
  into: bench,
  ...more,
})
const plugs = (isBack: boolean): Command =>
  back({ pieces: [], tookOut: { text: '2 plugs', items: [{ name: 'plugs', count: 2, back: isBack }] } })

export const outingCases = {
  'date-past': [
    {
      given: apart,
      when: sent({ due: '2026-04-30' }),
      says: ['30 Apr is 2 days ago: today is 2 May.', '> Say it again with a day that is still to come.'],
    },
    {
      given: apart,
      when: sent({ due: '2025-12-31' }),
      says: [
        '31 Dec 2025 is 122 days ago: today is 2 May 2026.',
        '> Say it again with a day that is still to come.',
      ],
    },
  ],
  'out-already': [
    {
      given: [...apart, sent({ due: '2026-05-09' })],
      when: sent(),
      says: ['Rocker is out already, at Miller (b1) since 2 May, due 9 May.', '> Once back, "came back b1".'],
    },
    {
      given: [...apart, move('p1', at('out'))],
      when: sent(),
      says: ['Rocker is out already.', '> Once back, "came back p1".'],
    },
  ],
  'goes-and-stays': [
    {
      given: apart,
      when: sent({ aside: ['p1'] }),
      says: [
        'Rocker cannot go out and stay here.',
        '> Say it once: as going out, or behind the word without.',
      ],
    },
  ],
  'not-out': [
    {
      given: [...apart, sent()],
      when: back({ pieces: [{ piece: 'p2' }] }),
      says: [
        'Seat bolts did not go out with b1, but are in bag 1.',
        '  1 × rocker: out.',
        '> Say it without that piece: "came back b1".',
      ],
    },
    {
      given: [...apart, sent({ pieces: [{ piece: 'p2', count: 2 }] })],
      when: back({ outing: undefined, pieces: [{ piece: 'p1' }] }),
      says: [
        'Rocker is not out, but on the bench.',
        '  2 × seat bolts, at Miller (b1).',
        '> Look which piece came back, and say that.',
      ],
    },
  ],
  'back-already': [
    {
      given: [...apart, sent(), back()],
      when: back(),
      says: [
        'All that went out as b1 is back already.',
        '  1 × rocker: on the bench.',
        '> Nothing needs doing.',
      ],
    },
    {
      given: [
        ...apart,
        sent({ pieces: [{ piece: 'p1' }, { piece: 'p2' }] }),
        back({ pieces: [{ piece: 'p2' }] }),
      ],
      when: back({ pieces: [{ piece: 'p2' }] }),
      says: [
        'Seat bolts are back already.',
        '  Still away: 1 × rocker.',
        '> Say what came back now: "came back b1".',
      ],
    },
  ],
  'too-many-back': [
    {
      given: [...apart, sent({ pieces: [{ piece: 'p2', count: 3 }] })],
      when: back({ pieces: [{ piece: 'p2', count: 4 }] }),
      says: [
        'Seat bolts: 3 away with b1, 4 said to be back: 1 too many.',
        '> Count what came back, and say that number.',
      ],
    },
  ],
  'taken-out-already': [
    {
      given: [...apart, sent(), back(), plugs(true)],
      when: plugs(true),
      says: [
        '2 × plugs taken out there are in the record already (b1), on the bench.',
        '> If these are others, give them a name that tells the two apart.',
      ],
    },
  ],
} satisfies Record<string, Cases>

/** What stays refused as it always was. */
export const stillRefused: { given: Command[]; when: Command; says: string[] }[] = [
  {
    given: [...apart, fitted('p1')],
    when: sent(),
    says: ['Rocker is on the machine.', '> Take it off first: "reopen 1 because ...".'],
  },
]
