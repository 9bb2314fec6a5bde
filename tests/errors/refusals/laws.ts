import type { Cases } from '../case.ts'
import { begin, bench, bought, end, fitted, gasket, into, job, move, off, recount, set } from '../commands.ts'
import { on } from '../replacing-commands.ts'

const caps = [job, begin('Cam caps off'), set('cam caps', ['I1', 'I2', 'I3', 'I4']), end]
const bolts = [job, begin('Seat off'), off(8, 'seat bolts', { size: 'M6x25 hex 10' }), end]
const nineCounted = [...bolts, recount(1, ['p1', 9])]

/** By law. */
export const lawCases = {
  'unknown-piece': [
    {
      given: bolts,
      unreachable: 'a piece that is not there is refused as unknown before that',
      refusal: { code: 'law', violation: { law: 'unknown-piece', piece: 'p7' } },
      says: ['There is no piece p7 in this job.', '> "where" shows every piece.'],
    },
  ],
  'account-twice': [
    {
      given: bolts,
      unreachable: 'a command deals its piece numbers itself, and none is dealt twice',
      refusal: { code: 'law', violation: { law: 'account-twice', piece: 'p1' } },
      says: ['Seat bolts M6x25 hex 10 are in the record already.', '> Say it again; nothing was changed.'],
    },
  ],
  'not-whole': [
    {
      given: bolts,
      unreachable: 'a count that is not whole is refused as count-wrong before that',
      refusal: { code: 'law', violation: { law: 'not-whole', piece: 'p1', count: 2.5 } },
      says: ['Seat bolts M6x25 hex 10: 2.5 is no number of pieces.', '> Count once more and say the number.'],
    },
  ],
  'same-place': [
    {
      given: nineCounted,
      when: {
        do: 'explain',
        difference: 'd1',
        how: { kind: 'moved', piece: 'p1', other: into(1) },
        reason: 'seen',
      },
      says: ['Seat bolts M6x25 hex 10 cannot go from bag 1 to the same place.', '> Say where else.'],
    },
  ],
  'more-than-there': [
    {
      given: bolts,
      when: fitted({ piece: 'p1', count: 6 }, { piece: 'p1', count: 6 }),
      says: [
        'Seat bolts M6x25 hex 10: bag 1 holds 2, 6 wanted: 4 short.',
        '> Count what is in your hand, and say that number.',
      ],
    },
  ],
  'not-its-position': [
    {
      given: caps,
      when: fitted({ piece: 'p3', position: 'I4' }),
      says: [
        'Not at I4: cam cap I3 goes home to Cam caps / I3 only.',
        '> Put it there: "fit p3 at I3"; should it change homes for good, "swap p3 and p4 because ...".',
      ],
    },
    {
      given: [job, begin('Pump off'), off(3, 'pump bolts', { alikeAt: ['1', '2', '3'] }), end],
      when: fitted({ piece: 'p1', position: '4' }),
      says: ['Pump bolts do not belong at position 4.', '> Positions: 1, 2, 3.'],
    },
  ],
  'position-not-said': [
    {
      given: caps,
      when: fitted('p3'),
      says: [
        'Cam cap I3 belongs to one position only, and none was said.',
        '> Its home is Cam caps / I3: "fit p3 at I3".',
      ],
    },
  ],
  'home-full': [
    {
      given: [...bolts, bought(2, 'p1')],
      when: fitted({ piece: 'p1', count: 10 }),
      says: [
        'Seat bolts M6x25 hex 10: 8 belong there, 10 would be there: 2 too many.',
        '> Look where the rest belongs: "left"; what is surplus, "spare 2 p1".',
      ],
    },
    {
      given: [job, begin('Seat off'), gasket, end, bought(1, 'p1')],
      when: fitted('p1'),
      says: [
        'Gasket (p1) was replaced, and does not go back.',
        '  In its place: p2, on the bench.',
        '> Fit the new: "compare p2: alike", then "fit p2".',
      ],
    },
    {
      given: [
        ...bolts,
        move('p1', bench, { count: 3 }),
        { do: 'leave-off', piece: 'p1', reason: 'bracket gone' },
      ],
      when: fitted('p1'),
      says: [
        'Nothing on the machine waits for seat bolts M6x25 hex 10.',
        '> Put them out of the way: "scrap 5 p1 from bag 1" or "spare 5 p1 from bag 1".',
      ],
    },
  ],
  'carried-by-itself': [
    {
      given: [
        job,
        begin('Pump off'),
        off(1, 'water pump', { kind: 'part' }, bench),
        end,
        on('p1', 1, 'threaded plug'),
        on('p2', 1, 'seal ring'),
      ],
      when: { do: 'move-over', to: 'p2', pieces: ['p1'] },
      says: [
        'Water pump cannot sit on threaded plug, which sits on it.',
        '> Say what it is taken off first.',
      ],
    },
  ],
  'no-carrier': [
    {
      given: bolts,
      unreachable: 'a piece is known before anything goes onto it; only a damaged record could name another',
      refusal: { code: 'law', violation: { law: 'no-carrier', piece: 'p1', carrier: 'p9' } },
      says: [
        'Seat bolts M6x25 hex 10 cannot sit on p9: there is no such piece.',
        '> "where" shows every piece.',
      ],
    },
  ],
  'not-conserved': [
    {
      given: bolts,
      unreachable: 'moves take from one place what they give to another; only an audit could find it',
      refusal: { code: 'law', violation: { law: 'not-conserved', piece: 'p1', entered: 8, found: 7 } },
      says: [
        'Seat bolts M6x25 hex 10: 8 entered the record, 7 are found in it.',
        '> The record is damaged: make a copy of the job folder, and change nothing in it.',
      ],
    },
  ],
} satisfies Record<string, Cases>
