import { expect, test } from 'vitest'
import { worked } from './worked.ts'

const grip = 'The handle counts from the middle of the grip, where the hand pulls.'
const under = 'Worked out, not a specification: the service manual decides.'

test.each([
  [
    'setting 40 Nm handle 400 mm adapter 50 mm',
    ['Set the wrench to 35.6 N·m.', '40 N·m × 400 / (400 + 50) = 35.6 N·m', grip, under],
  ],
  // NAVEDTRA 14315, figures 3-44 and 3-45, prints 66.7.
  [
    'setting 100 in-lb handle 12 in extension 6 in',
    ['Set the wrench to 66.7 lbf·in.', '100 lbf·in × 12 / (12 + 6) = 66.7 lbf·in', grip, under],
  ],
  // Both lengths in the unit of the handle.
  [
    'setting 40 Nm crow-foot 2 in handle 400 mm at 60 deg',
    ['Set the wrench to 37.6 N·m.', '40 N·m × 400 / (400 + 50.8 × cos 60°) = 37.6 N·m', grip, under],
  ],
  [
    'setting 40 Nm handle 400 mm adapter 50 mm at 90 deg range 20..100 Nm',
    [
      'Set the wrench to 40 N·m.',
      '40 N·m × 400 / (400 + 50 × cos 90°) = 40 N·m',
      grip,
      'The wrench goes from 20 to 100 N·m.',
      under,
    ],
  ],
  [
    'setting 22 Nm range 20..100 Nm',
    ['Set the wrench to 22 N·m.', 'The wrench goes from 20 to 100 N·m.', under],
  ],
  [
    'setting 15 Nm range 5 to 100 Nm',
    [
      'Set the wrench to 15 N·m: in its lowest fifth.',
      'The wrench goes from 5 to 100 N·m: of use from 20 N·m up (common practice).',
      under,
    ],
  ],
  [
    'setting 150 Nm range 10-80 lbf·ft',
    [
      'Set the wrench to 150 N·m (111 lbf·ft): above its range.',
      'The wrench goes from 10 to 80 lbf·ft: take a larger one.',
      under,
    ],
  ],
  [
    'setting 8 Nm range 10 Nm..50 Nm',
    [
      'Set the wrench to 8 N·m: below its range.',
      'The wrench goes from 10 to 50 N·m: take a smaller one.',
      under,
    ],
  ],
  [
    'setting 40 Nm handle 0 mm adapter 50 mm',
    ['A handle of no length turns nothing: give the length from grip to drive.'],
  ],
  [
    'setting 40 Nm handle 400 mm adapter 450 mm at 180°',
    ['The adapter brings the fastener under the hand or behind it: turn it round.'],
  ],
])('%s', (line, rows) => expect(worked(line)).toEqual(rows))
