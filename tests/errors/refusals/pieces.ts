import type { Cases } from '../case.ts'
import {
  at,
  begin,
  bench,
  bought,
  end,
  fitted,
  gasket,
  job,
  move,
  off,
  put,
  recount,
  set,
} from '../commands.ts'

const caps = [job, begin('Cam caps off'), set('cam caps', ['I1', 'I2', 'I3', 'I4']), end]
const bolts = [job, begin('Seat off'), off(8, 'seat bolts', { size: 'M6x25 hex 10' }), end]

export const pieceCases = {
  'home-exists': [
    {
      given: caps,
      when: off(1, 'cam caps', { positions: ['I3'], at: 'Cam caps' }),
      says: [
        'I3 is taken: cam cap I3 came off there and is in bag 1.',
        '> Look at the mark on the part; if the earlier entry was wrong, "undo" takes back the last one.',
      ],
    },
  ],
  'which-position': [
    {
      given: [job],
      when: off(3, 'cam caps', { should: 4, positions: ['I1', 'I2', 'I3', 'I4'] }),
      says: [
        'Cam caps I1, I2, I3, I4: some are missing or broken, and the number does not say which.',
        '> Take off the whole ones by their positions, then the others one by one.',
      ],
    },
  ],
  'not-in-step': [
    {
      given: [...bolts, begin('Tank off'), off(3, 'tank bolts'), end],
      when: { do: 'fit', step: 1, fittings: [{ piece: 'p2' }] },
      says: ['Tank bolts belong to step 2, Tank, not to step 1, Seat.', '> Leave them until then: "take 2".'],
    },
  ],
  'not-for-home': [
    {
      given: [job, put('rag', 'inlet port')],
      when: fitted('p1'),
      says: [
        'Rag at inlet port does not stay on the machine: it belongs in the toolbox.',
        '> "take out p1" when out.',
      ],
    },
    {
      given: [job, begin('Seat off'), gasket, end, move('p1', at('scrap')), bought(1, 'p1', true)],
      when: bought(1, 'p1', true),
      says: [
        'Gasket (p1) was replaced, and does not go back.',
        '  In its place: p2, on the bench.',
        '> Fit the new: "fit p2".',
      ],
    },
    {
      given: [job, off(0, 'dowel', { should: 1 }), { do: 'leave-off', piece: 'p1', reason: 'never fitted' }],
      when: bought(1, 'p1', true),
      says: ['Nothing on the machine waits for dowel.', '> Nothing needs doing.'],
    },
  ],
  'one-by-one': [
    {
      given: caps,
      when: fitted({ piece: 'p1', position: 'I1' }, { piece: 'p2', position: 'I2' }),
      says: [
        'Cam cap I1 and cam cap I2 each have a home of their own, so they go home one by one.',
        '> First "fit p1 at I1", then the next.',
      ],
    },
    {
      given: caps,
      when: bought(1, 'p3'),
      says: [
        'Cam cap I3 has one home, and the record still has the old one in bag 1: another has no home.',
        '> If it takes the place of the old one: "new p3 instead".',
      ],
    },
  ],
  'piece-used': [
    {
      given: [job, begin('Seat off'), gasket, end],
      when: fitted('p1'),
      says: [
        'Gasket is single-use and used: a new one goes in.',
        '> "new p1" when here, or "use again p1 because ...".',
      ],
    },
  ],
  'home-already': [
    {
      given: [...bolts, fitted('p1')],
      when: fitted('p1'),
      says: [
        'All 8 seat bolts M6x25 hex 10 are home already.',
        '> Look where the one in your hand belongs: "left".',
      ],
    },
  ],
  'not-within-reach': [
    {
      given: [...bolts, recount(1, ['p1', 9])],
      when: {
        do: 'explain',
        difference: 'd1',
        how: { kind: 'moved', piece: 'p1', other: bench },
        reason: 'seen',
      },
      says: [
        'Seat bolts M6x25 hex 10: none within reach, 1 wanted: 1 short.',
        '  8 × seat bolts M6x25 hex 10 are in bag 1.',
        '> Say the number that is there, or where else they lie.',
      ],
    },
    {
      given: [...bolts, move('p1', at('out'), { count: 3 })],
      when: fitted({ piece: 'p1', count: 8 }),
      says: [
        'Seat bolts M6x25 hex 10: bag 1 holds 5, 8 wanted: 3 short.',
        '  3 × seat bolts M6x25 hex 10 are out.',
        '> Once back, "move 3 p1 from out to bench".',
      ],
    },
    {
      given: bolts,
      when: move('p1', at('scrap'), { count: 9 }),
      says: [
        'Seat bolts M6x25 hex 10: bag 1 holds 8, 9 wanted: 1 short.',
        '> Count what is in your hand, and say that number.',
      ],
    },
    {
      given: [
        ...bolts,
        move('p1', bench, { count: 3 }),
        move('p1', at('scrap'), { count: 2, from: 'bench' }),
      ],
      when: fitted({ piece: 'p1', count: 8 }),
      says: [
        'Seat bolts M6x25 hex 10: 6 within reach, 8 wanted: 2 short.',
        '  1 × seat bolt M6x25 hex 10 is on the bench.',
        '  5 × seat bolts M6x25 hex 10 are in bag 1.',
        '  2 × seat bolts M6x25 hex 10 are in scrap.',
        '> Look for the rest first; then "new 2 p1" when here, or "leave off 2 p1 because ...".',
      ],
    },
  ],
  'nothing-there': [
    {
      given: [...bolts, fitted('p1')],
      when: move('p1', at('scrap')),
      says: [
        'Seat bolts M6x25 hex 10: none to be moved from there.',
        '  On the machine.',
        '> What is on the machine comes off with its step: "reopen 1 because ...".',
      ],
    },
  ],
  'which-place': [
    {
      given: [...bolts, move('p1', bench, { count: 3 })],
      when: move('p1', at('out')),
      says: [
        'Seat bolts M6x25 hex 10 lie in 2 places, so the number is needed.',
        '  5 in bag 1.',
        '  3 on the bench.',
        '> Say how many: "move 5 p1 from bag 1 to PLACE".',
      ],
    },
  ],
  'through-a-step': [
    {
      given: bolts,
      when: move('p1', at('machine')),
      says: [
        'Seat bolts M6x25 hex 10 go home by fitting in step 1, Seat, not by a move.',
        '> Put them home: "fit p1".',
      ],
    },
  ],
  'too-many-left-off': [
    {
      given: bolts,
      when: { do: 'leave-off', piece: 'p1', count: 9, reason: 'two are decoration' },
      says: [
        'Seat bolts M6x25 hex 10: 8 not on the machine, 9 to be left off: 1 too many.',
        '> Say the number again.',
      ],
    },
    {
      given: [...bolts, fitted('p1')],
      when: { do: 'leave-off', piece: 'p1', reason: 'two are decoration' },
      says: [
        'Seat bolts M6x25 hex 10: none is missing on the machine, so none can be left off.',
        '> Nothing needs doing.',
      ],
    },
  ],
  'not-lost': [
    {
      given: bolts,
      when: { do: 'accept-lost', piece: 'p1', reason: 'never found' },
      says: [
        'Seat bolts M6x25 hex 10: none is lost without a decision.',
        '  In bag 1.',
        '> If it cannot be found, "lost p1 because ..." first.',
      ],
    },
  ],
  'not-single-use': [
    {
      given: bolts,
      when: { do: 'use-again', piece: 'p1', reason: 'looks good' },
      says: [
        'Seat bolts M6x25 hex 10: not single-use, or not used yet, so no decision is due.',
        '> Nothing needs doing: they go home as they are.',
      ],
    },
  ],
  'not-matched': [
    {
      given: bolts,
      when: { do: 'rehome', homes: [{ piece: 'p1', position: '' }], reason: 'swapped' },
      says: [
        'Seat bolts M6x25 hex 10: any of them fits any position, so there is none to change.',
        '> Nothing needs doing: they go home to Seat.',
      ],
    },
  ],
  'home-taken': [
    {
      given: caps,
      when: { do: 'rehome', homes: [{ piece: 'p3', position: 'I4' }], reason: 'new set' },
      says: [
        'I4 is the home of cam cap I4.',
        '> Name both, so that they change homes with each other: "swap PIECE and p4 because ...".',
      ],
    },
  ],
  'name-taken': [
    {
      given: [job, begin('Cam caps off'), set('cam caps', ['I1', 'I2']), set('caps', ['I1', 'I2'])],
      when: { do: 'rename-piece', piece: 'p3', name: 'cam caps' },
      says: [
        "The name 'cam caps' is taken: cam cap I1 (p1) belongs to the same home.",
        '> Give it a name that tells the two apart.',
      ],
    },
  ],
  'no-such-position': [
    {
      given: caps,
      when: { do: 'rehome', homes: [{ piece: 'p3', position: 'I5' }], reason: 'new set' },
      says: ['There is no I5 in this set.', '> Its positions are I1, I2, I3 and I4.'],
    },
  ],
  'already-fitted': [
    {
      given: [...caps, fitted({ piece: 'p3', position: 'I3' })],
      when: { do: 'rehome', homes: [{ piece: 'p3', position: 'I4' }], reason: 'new set' },
      says: ['Cam cap I3 is on the machine.', '> Take it off first: "reopen 1 because ...".'],
    },
  ],
} satisfies Record<string, Cases>
