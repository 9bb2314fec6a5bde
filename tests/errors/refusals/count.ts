import type { Cases } from '../case.ts'
import { bench, into, job, off, recount } from '../commands.ts'

const bag = [job, off(8, 'cover bolts', { size: 'M6x25 hex 10' }), off(8, 'sealing washers', {}, into(1))]

export const countCases = {
  'count-by-piece': [
    {
      given: bag,
      when: recount(1, ['p1', 8]),
      says: [
        'The count of bag 1 needs a number for each kind of piece in it.',
        '  p2, sealing washers.',
        '> Count each kind, 0 when there is none: "count 1: p1=..., p2=...".',
      ],
    },
    {
      given: [job, { do: 'open-container', kind: 'bag' }],
      when: recount(1),
      says: ['No number was given for bag 1.', '> Count, then "count 1 = ...".'],
    },
  ],
  'explains-nothing': [
    {
      given: [...bag, recount(1, ['p1', 7], ['p2', 8])],
      when: {
        do: 'explain',
        difference: 'd1',
        how: { kind: 'moved', piece: 'p2', other: bench },
        reason: 'seen there',
      },
      says: [
        'That is another piece, which leaves this count as wrong as it was.',
        '  d1, bag 1, cover bolts M6x25 hex 10: 7 counted, 8 in the record, 1 short.',
        '> Look for it: "explain d1 p1 to PLACE because ..." when found, or "explain d1 missing because ...".',
      ],
    },
    {
      given: [...bag, recount(1, ['p1', 9], ['p2', 8])],
      when: { do: 'explain', difference: 'd1', how: { kind: 'missing' }, reason: 'not found' },
      says: [
        'Nothing is missing there: more was counted than the record has.',
        '  d1, bag 1, cover bolts M6x25 hex 10: 9 counted, 8 in the record, 1 too many.',
        '> Look where it came from: "explain d1 p1 from PLACE because ...", or "explain d1 unknown NAME because ...".',
      ],
    },
    {
      given: [...bag, recount(1, ['p1', 7], ['p2', 8])],
      when: {
        do: 'explain',
        difference: 'd1',
        how: { kind: 'unknown-piece', name: 'dowel' },
        reason: 'nobody knows',
      },
      says: [
        'No unknown piece explains that: fewer were counted than the record has.',
        '  d1, bag 1, cover bolts M6x25 hex 10: 7 counted, 8 in the record, 1 short.',
        '> Look for it: "explain d1 p1 to PLACE because ..." when found, or "explain d1 missing because ...".',
      ],
    },
  ],
} satisfies Record<string, Cases>
