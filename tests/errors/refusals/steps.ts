import type { Cases } from '../case.ts'
import {
  added,
  at,
  begin,
  done,
  drained,
  end,
  filled,
  fitted,
  job,
  look,
  marked,
  move,
  off,
  override,
  put,
  reopen,
  take,
  tightening,
  torque,
  turn,
  turnedOver,
} from '../commands.ts'

const seat = [job, begin('Seat off'), off(8, 'seat bolts', { size: 'M6x25 hex 10' }), end]
const seatAndTank = [
  job,
  begin('Seat off'),
  off(2, 'seat bolts'),
  begin('Tank off'),
  off(3, 'tank bolts'),
  end,
]

export const stepCases = {
  'no-strip-step': [
    {
      given: [job],
      when: end,
      says: ['Nothing is coming off now, so there is nothing to end.', '> "begin TITLE" starts a step.'],
    },
  ],
  'not-a-strip-step': [
    {
      given: [job, added('Clean the faces')],
      when: begin('Cover off', [1]),
      says: [
        'Step 1, Clean the faces, is done on the way back only: it has no place in the order of coming off.',
        '> Name steps that came off.',
      ],
    },
  ],
  cycle: [
    {
      given: seatAndTank,
      when: { do: 'change-step', step: 1, after: [2] },
      says: [
        'Steps 1, 2, 1 would each wait for the next, without end.',
        '  Step 1, Seat.',
        '  Step 2, Tank.',
        '> Leave one of these needs out.',
      ],
    },
    {
      given: seatAndTank,
      when: added('Clean the faces', [1], [2]),
      says: [
        'Steps 1, 2, 3, 1 would each wait for the next, without end.',
        '  Step 1, Seat.',
        '  Step 2, Tank.',
        '  Step 3, the new one.',
        '> Leave one of these needs out.',
      ],
    },
  ],
  'step-blocked': [
    {
      given: seatAndTank,
      when: take(1),
      says: [
        'Step 1, Seat, cannot start yet: 1 reason.',
        '  Step 2, Tank, comes before and is not begun: "take 2".',
        '> Lift it, or go past it knowingly: "override start 1 because ...".',
      ],
    },
    {
      given: [
        ...seat,
        take(1),
        put('rag', 'inlet port'),
        fitted({ piece: 'p1', count: 5 }),
        move('p1', at('out'), { count: 2 }),
      ],
      when: done(),
      says: [
        'Step 1, Seat, is not complete: 3 reasons.',
        '  1 × seat bolt M6x25 hex 10 not home, in bag 1: "fit 1 p1".',
        '  2 × seat bolts M6x25 hex 10 not home, out: once back, "move 2 p1 from out to bench".',
        '  1 × rag at inlet port is still in the machine: "take out p2" when out.',
        '> Lift them, nearest first, or go past all of them knowingly: "override finish 1 because ...".',
      ],
    },
    {
      given: [job, begin('Bucket set off'), off(4, 'buckets'), begin('Rail off'), off(2, 'rail bolts'), end],
      when: look(1),
      says: [
        'The last look before step 1, Bucket set, cannot be taken yet: 2 reasons.',
        '  2 × rail bolts not home, in bag 2: "fit p2".',
        '  Step 2, Rail, comes before and is not begun: "take 2".',
        '> Lift them, nearest first.',
      ],
    },
    {
      given: [...seat, tightening('p1', torque), take(1)],
      when: turn(),
      says: [
        'Step 1, Seat, is not complete: 1 reason.',
        '  8 × seat bolts M6x25 hex 10 not home, in bag 1: "fit p1".',
        '> Lift it.',
      ],
    },
  ],
  'step-not-begun': [
    {
      given: [job, begin('Seat off'), marked('dot up'), end],
      when: { do: 'confirm', mark: 'm1' },
      says: ['Step 1, Seat, is not taken up yet.', '> Take it up: "take 1".'],
    },
    {
      given: [job, begin('Seat off'), marked('dot up'), end, take(1), reopen(1)],
      when: { do: 'confirm', mark: 'm1' },
      says: ['Step 1, Seat, was reopened and is not taken up again.', '> Take it up: "take 1".'],
    },
    {
      given: [job, begin('Plug out'), drained('oil', 1.8), end, take(1), override('f1'), done()],
      when: filled('f1', 1.9),
      says: ['Step 1, Plug, is done already.', '> "reopen 1 because ..." opens it again.'],
    },
  ],
  'step-done': [
    {
      given: [job, begin('Seat off'), off(2, 'seat bolts'), end, fitted('p1'), done()],
      when: take(1),
      says: ['Step 1, Seat, is done already.', '> "reopen 1 because ..." opens it again.'],
    },
  ],
  'step-under-way': [
    {
      given: [job, begin('Seat off'), off(2, 'seat bolts'), end, take(1)],
      when: take(1),
      says: ['Step 1, Seat, is under way already.', '> Go on with it; "done 1" when it is complete.'],
    },
  ],
  'not-turned-over': [
    {
      given: [job, begin('Seat off'), off(2, 'seat bolts'), end, take(1)],
      when: turnedOver(),
      says: [
        'Step 1, Seat, is no step in which the machine is turned over by hand.',
        '> Name one, or add it: "add turn the crank over by hand turns 2".',
      ],
    },
  ],
  'no-build-step': [
    {
      given: [job],
      when: turnedOver(),
      says: ['No step is under way on the way back.', '> "back" shows the plan, "take N" takes a step up.'],
    },
    {
      given: [job],
      when: done(),
      says: ['No step is under way on the way back.', '> "back" shows the plan, "take N" takes a step up.'],
    },
  ],
  'nothing-to-reopen': [
    {
      given: seat,
      when: reopen(1),
      says: [
        'Step 1 is neither done nor under way, so there is nothing to open again.',
        '> Take it up: "take 1".',
      ],
    },
    {
      given: seat,
      when: reopen(),
      says: ['No step was named to open again.', '> Name it: "reopen N because ...".'],
    },
  ],
  'nothing-to-override': [
    {
      given: [job, begin('Seat off'), off(2, 'seat bolts'), end],
      when: override('start 1'),
      says: ['Nothing stands in the way of the start of step 1, Seat.', '> Go on without an override.'],
    },
    {
      given: [...seatAndTank, override('start 1')],
      when: override('start 1'),
      says: [
        'Overridden already: the start of step 1, Seat.',
        '  Because the gauge is on its way.',
        '> Go on.',
      ],
    },
  ],
} satisfies Record<string, Cases>
