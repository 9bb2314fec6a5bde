import type { Command } from '../../src/journal/command.ts'
import type { Reason } from '../../src/plan/reasons.ts'
import {
  afterStart,
  angle,
  at,
  begin,
  bought,
  done,
  drained,
  end,
  fitted,
  gasket,
  job,
  lastRound,
  marked,
  missed,
  move,
  off,
  put,
  recount,
  reopen,
  stopped,
  take,
  tightening,
  torque,
  turn,
  turnedByHand,
  turnedOver,
} from './commands.ts'
import { consumableReasons } from './consumables.ts'
import { judgingReasonCases } from './judging.ts'
import { outingAwayCases, outingReasons } from './outings.ts'
import { replacingReasonCases } from './replacing.ts'
import { secondLookReasons } from './second-looks.ts'

/** A story, the gate of a step that is asked, and every reason that it gives, word for word. */
export interface ReasonCase {
  given: Command[]
  gate: 'start' | 'finish' | 'look'
  step: number
  says: string[]
}

/** A reason that no gate gives today. Its words are kept right all the same. */
export interface UnreachableReason {
  given: Command[]
  unreachable: string
  reason: Reason
  says: string[]
}

const seat = [job, begin('Seat off'), off(8, 'seat bolts', { size: 'M6x25 hex 10' }), end]
const seatOnTank = [job, begin('Seat off'), off(2, 'seat bolts'), begin('Tank off'), off(3, 'tank bolts')]
const head = [
  job,
  begin('Gear off'),
  off(4, 'gear bolts'),
  end,
  tightening('p1', torque, angle),
  fitted('p1'),
]

export const reasonCases = {
  ...judgingReasonCases,
  ...replacingReasonCases,
  'still-stripping': [
    {
      given: seatOnTank,
      gate: 'start',
      step: 2,
      says: ['Step 2, Tank off, is still coming off: "end" when it is off.'],
    },
  ],
  'step-before': [
    {
      given: seatOnTank,
      gate: 'start',
      step: 1,
      says: ['Step 2, Tank off, comes before and is still coming off: "end" when it is off.'],
    },
    {
      given: [...seatOnTank, end],
      gate: 'start',
      step: 1,
      says: ['Step 2, Tank, comes before and is not begun: "take 2".'],
    },
    {
      given: [...seatOnTank, end, take(2)],
      gate: 'start',
      step: 1,
      says: ['Step 2, Tank, comes before and is under way: "done 2" when complete.'],
    },
    {
      given: [...seatOnTank, end, take(2), reopen(2)],
      gate: 'start',
      step: 1,
      says: ['Step 2, Tank, comes before and was reopened: "take 2".'],
    },
  ],
  'not-cleared': [
    {
      given: [job, afterStart('Look for leaks')],
      gate: 'start',
      step: 1,
      says: ['It comes after the first start: "clear", then "started".'],
    },
    {
      given: [job, afterStart('Look for leaks'), { do: 'clear' }],
      gate: 'start',
      step: 1,
      says: ['It comes after the first start: "started" when the machine has run.'],
    },
  ],
  'piece-short': [
    {
      given: [...seat, move('p1', at('scrap'), { count: 2 })],
      gate: 'start',
      step: 1,
      says: [
        'Seat bolts M6x25 hex 10: 8 belong there, 6 to be had, 2 in scrap: 2 short. "new 2 p1" when here, or "leave off 2 p1 because ...".',
      ],
    },
    {
      given: [job, begin('Seat off'), off(7, 'seat bolts', { should: 8 }), end],
      gate: 'start',
      step: 1,
      says: [
        'Seat bolts: 8 belong there, 7 to be had, 1 missing when the job began: 1 short. "new 1 p1" when found or here, or "leave off 1 p1 because ...".',
      ],
    },
    {
      given: [
        job,
        begin('Pump out'),
        off(1, 'woodruff key'),
        end,
        move('p1', at('lost'), { reason: 'rolled away' }),
      ],
      gate: 'start',
      step: 1,
      says: [
        'Woodruff key is missing, 1 lost. "move p1 to bench" when found, "new p1" when here, or "leave off p1 because ...".',
      ],
    },
  ],
  'piece-away': [
    {
      given: [...seat, move('p1', at('out'), { count: 2 })],
      gate: 'start',
      step: 1,
      says: ['2 × seat bolts M6x25 hex 10 are out: once back, "move 2 p1 from out to bench".'],
    },
    ...outingAwayCases,
    {
      given: [...seat, move('p1', at('scrap')), bought(8, 'p1', false, at('supplier'))],
      gate: 'start',
      step: 1,
      says: ['8 × seat bolts M6x25 hex 10 are at a supplier: once here, "move 8 p1 from supplier to bench".'],
    },
  ],
  'piece-used': [
    {
      given: [job, begin('Seat off'), gasket, end],
      gate: 'start',
      step: 1,
      says: [
        'Gasket is single-use and used, a new one goes in: "new p1" when here, or "use again p1 because ...".',
      ],
    },
    {
      given: [job, begin('Gear off'), off(8, 'gear bolts', { singleUse: true }), end],
      gate: 'start',
      step: 1,
      says: [
        'Gear bolts are single-use and used, new ones go in: "new 8 p1" when here, or "use again p1 because ...".',
      ],
    },
  ],
  'fault-open': [
    {
      given: [...head, turn(), missed('it keeps turning')],
      gate: 'finish',
      step: 1,
      says: [
        'x1, fastener 2 of t1 (Gear: gear bolts): no torque, it keeps turning: "settle x1: ..." with how it was put right, or "override x1 because ..." if it may stay so.',
        't1 (Gear: gear bolts): pass 1 of 2: 20 Nm: 1 of 4 turned, next fastener 2: "turn".',
      ],
    },
    {
      given: [
        job,
        begin('Exhaust off'),
        off(4, 'exhaust studs', { broken: { kind: 'snapped', count: 1 } }),
        end,
        bought(1, 'p1'),
      ],
      gate: 'start',
      step: 1,
      says: [
        'x1, 1 × exhaust stud snapped: get out what is left of it, then "settle x1: ..." with how, or "override x1 because ..." if it may stay so.',
      ],
    },
  ],
  'count-open': [
    {
      given: [...seat, recount(1, ['p1', 7])],
      gate: 'start',
      step: 1,
      says: [
        'Count not explained: d1, bag 1, seat bolts M6x25 hex 10: 7 counted, 8 in the record, 1 short. Look for it: "explain d1 p1 to PLACE because ..." when found, or "explain d1 missing because ...".',
      ],
    },
    {
      given: [...seat, recount(1, ['p1', 8], [null, 1])],
      gate: 'start',
      step: 1,
      says: [
        'Count not explained: d1, bag 1: 1 that the record does not have there. Look where it came from: "explain d1 PIECE from PLACE because ...", or "explain d1 unknown NAME because ...".',
      ],
    },
    {
      given: [...seat, take(1), fitted('p1'), done(1), lastRound, take(2), recount(1, [null, 1])],
      gate: 'finish',
      step: 2,
      says: [
        'Count not explained: d1, bag 1: 1 that the record does not have there. It may be 1 × seat bolt M6x25 hex 10, recorded as fitted in step 1, Seat: "explain d1 p1 from machine because ..."; else look where it came from: "explain d1 PIECE from PLACE because ...", or "explain d1 unknown NAME because ...".',
      ],
    },
  ],
  'aid-in': [
    {
      given: [...seat, take(1), put('rag', 'inlet port'), fitted('p1')],
      gate: 'finish',
      step: 1,
      says: ['1 × rag at inlet port is still in the machine: "take out p2" when out.'],
    },
  ],
  'not-home': [
    {
      given: [...seat, take(1), fitted({ piece: 'p1', count: 5 }), move('p1', at('out'), { count: 1 })],
      gate: 'finish',
      step: 1,
      says: [
        '2 × seat bolts M6x25 hex 10 not home, in bag 1: "fit 2 p1".',
        '1 × seat bolt M6x25 hex 10 not home, out: once back, "move 1 p1 from out to bench".',
      ],
    },
    {
      given: [job, begin('Caps off'), off(1, 'cam caps', { positions: ['I3'] }), end, take(1)],
      gate: 'finish',
      step: 1,
      says: ['Cam cap I3 not home, in bag 1: "fit p1 at I3".'],
    },
  ],
  'look-due': [
    {
      given: [job, begin('Valve cover off'), off(8, 'cover bolts'), end],
      gate: 'start',
      step: 1,
      says: [
        'Last look before step 1, Valve cover: see that all beneath is in place, counted, clean, nothing left inside, then "look 1".',
      ],
    },
  ],
  'mark-open': [
    {
      given: [
        job,
        begin('Caps off'),
        off(1, 'cam caps', { positions: ['I3'] }),
        marked('arrow to the chain', 'p1'),
        marked('cable over the frame'),
        end,
        fitted({ piece: 'p1', position: 'I3' }),
      ],
      gate: 'finish',
      step: 1,
      says: [
        'Mark m1 on cam cap I3 (arrow to the chain) not confirmed: see it, then "confirm m1".',
        'Mark m2 (cable over the frame) not confirmed: see it, then "confirm m2".',
      ],
    },
  ],
  'tighten-open': [
    {
      given: head,
      gate: 'finish',
      step: 1,
      says: ['t1 (Gear: gear bolts): pass 1 of 2: 20 Nm: 0 of 4 turned, next fastener 1: "turn".'],
    },
    {
      given: [...head, turn(), turn()],
      gate: 'finish',
      step: 1,
      says: ['t1 (Gear: gear bolts): pass 1 of 2: 20 Nm: 2 of 4 turned, next fastener 3: "turn".'],
    },
    {
      given: [...head, turn(), turn(), turn(), turn(), turn(), stopped('phone')],
      gate: 'finish',
      step: 1,
      says: [
        't1 (Gear: gear bolts): pass 2 of 2: 90 deg: fastener 2 may be turned already: "turned t1 yes because ..." or "turned t1 no because ...".',
      ],
    },
  ],
  'turns-open': [
    {
      given: [job, turnedByHand('Turn by hand', 2)],
      gate: 'finish',
      step: 1,
      says: [
        'Turned over by hand 0 of 2 full turns: "turned over 1" after each, the way the machine runs, never back.',
      ],
    },
    {
      given: [job, turnedByHand('Turn by hand', 2), turnedOver()],
      gate: 'finish',
      step: 1,
      says: [
        'Turned over by hand 1 of 2 full turns: "turned over 1" after each, the way the machine runs, never back.',
      ],
    },
  ],
  'fluid-open': [
    {
      given: [job, begin('Plug out'), drained('coolant', 2.1), end, take(1)],
      gate: 'finish',
      step: 1,
      says: ['Coolant (2.1 L drained) not filled: "fill coolant ..." with the amount.'],
    },
  ],
  'check-open': [
    {
      given: [job, afterStart('Look for leaks')],
      unreachable: 'an open check keeps the job from closing, and no step from starting or finishing',
      reason: { code: 'check-open', step: 1 },
      says: ['Step 1, Look for leaks, is not done: "done 1", or "fail 1: ..." with what was found.'],
    },
  ],
  ...secondLookReasons,
  ...consumableReasons,
  ...outingReasons,
} satisfies Record<Reason['code'], (ReasonCase | UnreachableReason)[]>
