import type { Command } from '../../src/journal/command.ts'
import type { Leftover } from '../../src/plan/leftovers.ts'
import {
  added,
  angle,
  at,
  begin,
  bought,
  done,
  drained,
  end,
  fitted,
  gasket,
  into,
  job,
  loosening,
  marked,
  merged,
  move,
  off,
  open,
  override,
  put,
  recount,
  stopped,
  take,
  tightening,
  tool,
  torque,
  turn,
} from './commands.ts'
import { consumableLeftovers } from './consumables.ts'
import { judgingLeftoverCases } from './judging.ts'
import { outingLeftovers } from './outings.ts'
import { replacingLeftoverCases } from './replacing.ts'
import { alike } from './replacing-commands.ts'
import { secondLookLeftovers } from './second-looks.ts'

/** A story, and how the leftovers of that kind are told: the line, then what to do. */
export interface LeftoverCase {
  given: Command[]
  says: string[]
}

/** A leftover that no story leads to today. Its words are kept right all the same. */
export interface UnreachableLeftover {
  given: Command[]
  unreachable: string
  leftover: Leftover
  says: string[]
}

const seat = [job, begin('Seat off'), off(8, 'seat bolts', { size: 'M6x25 hex 10' }), end]
/** The trap: a bolt left over, whose home lies under what is on already. */
const trap = [
  job,
  begin('Seat off'),
  off(2, 'seat bolts'),
  begin('Tank off'),
  off(3, 'tank bolts'),
  begin('Pump off'),
  open('bin'),
  open('bag', undefined, 3),
  off(4, 'pump bolts', { positions: ['1', '2', '3', '4'], size: 'M6x35' }),
  end,
  fitted({ piece: 'p3', position: '1' }),
  fitted({ piece: 'p4', position: '2' }),
  fitted({ piece: 'p5', position: '3' }),
  override('finish 3'),
  done(),
  fitted('p2'),
  done(),
  fitted('p1'),
  done(),
]

export const leftoverCases = {
  ...judgingLeftoverCases,
  ...replacingLeftoverCases,
  'piece-off': [
    {
      given: trap,
      says: [
        'Pump bolt M6x35 position 4 in bag 4 (017 0004 15) in bin 3: belongs to Pump / position 4, step 3. To reach it, undo: step 1, then step 2, then step 3.',
        '> "reopen 3 because ..." opens steps 1, 2 and 3, then "fit p6 at 4".',
      ],
    },
    {
      given: seat,
      says: ['8 × seat bolts M6x25 hex 10 in bag 1 (017 0001 24): belong to Seat, step 1.', '> "fit p1".'],
    },
    {
      given: [...seat, move('p1', at('out'), { count: 3 })],
      says: [
        '5 × seat bolts M6x25 hex 10 in bag 1 (017 0001 24): belong to Seat, step 1.',
        '> "fit 5 p1".',
        '3 × seat bolts M6x25 hex 10 out: belong to Seat, step 1.',
        '> Once back, "move 3 p1 from out to bench".',
      ],
    },
    {
      given: [
        job,
        open('tray', 8),
        begin('Caps off'),
        off(2, 'cam caps', { positions: ['I1', 'I2'], at: 'cylinder head' }, into(1)),
        end,
      ],
      says: [
        'Cam cap I1 in tray 1, slot 1 (017 0001 24): belongs to cylinder head / cam caps / I1, step 1.',
        '> "fit p1 at I1".',
        'Cam cap I2 in tray 1, slot 2 (017 0001 24): belongs to cylinder head / cam caps / I2, step 1.',
        '> "fit p2 at I2".',
      ],
    },
  ],
  'piece-short': [
    {
      given: [...seat, move('p1', at('scrap'), { count: 2 })],
      says: [
        '2 × seat bolts M6x25 hex 10 short, 6 of 8 to be had, 2 in scrap: belong to Seat, step 1.',
        '> "new 2 p1" when here, or "leave off 2 p1 because ...".',
      ],
    },
    {
      given: [job, begin('Seat off'), gasket, end, move('p1', at('lost'), { reason: 'blown away' })],
      says: [
        '1 × gasket short, none to be had, 1 lost: belongs to Seat, step 1.',
        '> "move p1 to bench" when found, "new p1" when here, or "leave off p1 because ...".',
      ],
    },
  ],
  'piece-lost': [
    {
      given: [...seat, move('p1', at('lost'), { count: 2, reason: 'fell into the drain' })],
      says: [
        '2 × seat bolts M6x25 hex 10 lost, and nobody has said that they may stay so.',
        '> Look for it: "move 2 p1 from lost to bench" when found, or "accept lost p1 because ...".',
      ],
    },
  ],
  'piece-left-in': [
    {
      given: seat,
      unreachable:
        'no home takes more than belongs there, and what is on the machine is not replaced or left off',
      leftover: { code: 'piece-left-in', piece: 'p1', count: 1 },
      says: [
        '1 × seat bolt M6x25 hex 10 too many on the machine, at Seat.',
        '> Take it off again: "reopen 1 because ...".',
      ],
    },
  ],
  'old-lying': [
    {
      given: [job, begin('Seat off'), gasket, end, bought(1, 'p1')],
      says: [
        '1 × gasket in bag 1 (017 0001 24): kept until p2 is held beside it.',
        '> Lay them side by side, then "compare p2: alike".',
      ],
    },
    {
      given: [job, begin('Seat off'), gasket, end, bought(1, 'p1'), alike('p2', true), fitted('p2')],
      says: [
        '1 × gasket in bag 1 (017 0001 24): nothing on the machine waits for it.',
        '> Put it out of the way: "scrap p1" or "spare p1".',
      ],
    },
    {
      given: [...seat, bought(2, 'p1'), fitted('p1')],
      says: [
        '2 × seat bolts M6x25 hex 10 in bag 1 (017 0001 24): nothing on the machine waits for them.',
        '> Put them out of the way: "scrap p1" or "spare p1".',
      ],
    },
    {
      given: [
        ...seat,
        recount(1, ['p1', 8], [null, 1]),
        {
          do: 'explain',
          difference: 'd1',
          how: { kind: 'unknown-piece', name: 'black washer' },
          reason: 'nobody knows it',
        },
      ],
      says: [
        '1 × black washer in bag 1 (017 0001 24): nobody has said where it belongs.',
        '> Put it out of the way: "scrap p2" or "spare p2".',
      ],
    },
  ],
  'aid-in': [
    {
      given: [...seat, take(1), put('rag', 'inlet port')],
      says: [
        '1 × rag at inlet port is still in the machine, put in during step 1, Seat.',
        '> "take out p2" when out.',
      ],
    },
    {
      given: [...seat, take(1), fitted('p1'), put('rag', 'inlet port'), override('finish 1'), done()],
      says: [
        '1 × rag at inlet port is still in the machine, put in during step 1, Seat. To reach it, undo: step 1.',
        '> "reopen 1 because ..." opens step 1, then "take out p2" when out.',
      ],
    },
  ],
  'tool-out': [
    {
      given: [...seat, tool('crank locking pin'), move('p2', into(1))],
      says: [
        '1 × crank locking pin is not back in the toolbox, in bag 1 (017 0001 24).',
        '> "return p2" when it is back.',
      ],
    },
  ],
  'fluid-open': [
    {
      given: [job, begin('Plug out'), drained('oil', 1.85), end],
      says: [
        'Oil (1.85 L drained): not filled, step 1, Plug.',
        '> "take 1", then "fill oil ..." with the amount.',
      ],
    },
    {
      given: [job, begin('Plug out'), drained('oil', 1.85), end, take(1)],
      says: ['Oil (1.85 L drained): not filled, step 1, Plug.', '> "fill oil ..." with the amount.'],
    },
  ],
  'mark-open': [
    {
      given: [job, begin('Seat off'), marked('cable over the frame'), end],
      says: [
        'Mark m1 (cable over the frame): not confirmed, step 1, Seat.',
        '> "take 1", then see it, then "confirm m1".',
      ],
    },
  ],
  'tighten-open': [
    {
      given: [...seat, tightening('p1', torque), fitted('p1'), turn()],
      says: [
        't1 (Seat: seat bolts): not tightened through, step 1, Seat.',
        '> "turn": pass 1 of 1: 20 Nm, fastener 2.',
      ],
    },
    {
      given: [
        job,
        begin('Gear off'),
        off(1, 'gear bolt'),
        end,
        tightening('p1', torque, angle),
        fitted('p1'),
        turn(),
        stopped('phone', true),
      ],
      says: [
        't1 (Gear: gear bolt): not tightened through, step 1, Gear.',
        '> "turned t1 yes because ..." or "turned t1 no because ...": pass 2 of 2: 90 deg, fastener 1.',
      ],
    },
  ],
  'eased-on': [
    {
      given: [
        job,
        begin('Seat off'),
        loosening('seat bolts', ['1', '2'], { kind: 'back-off', typed: 'free' }),
        turn(),
        end,
      ],
      says: [
        'l1 (seat bolts): eased and still on the machine, so they are loose, step 1, Seat.',
        '> "off ..." if they are off; if tight again as the manual has it, "override l1 because ...".',
      ],
    },
  ],
  'fault-open': [
    {
      given: [
        job,
        begin('Exhaust off'),
        off(4, 'exhaust studs', { broken: { kind: 'snapped', count: 1 } }),
        end,
      ],
      says: [
        'x1, 1 × exhaust stud snapped: not put right, at Exhaust, step 1, Exhaust.',
        '> Get out what is left of it, then "settle x1: ..." with how, or "override x1 because ..." if it may stay so.',
      ],
    },
  ],
  'count-open': [
    {
      given: [...seat, recount(1, ['p1', 9])],
      says: [
        'Count d1, bag 1, seat bolts M6x25 hex 10: 9 counted, 8 in the record, 1 too many: not explained.',
        '> Look where it came from: "explain d1 p1 from PLACE because ...", or "explain d1 unknown NAME because ...".',
      ],
    },
    {
      given: [...seat, take(1), fitted('p1'), done(1), recount(1, [null, 1])],
      says: [
        'Count d1, bag 1: 1 that the record does not have there: not explained; it may be 1 × seat bolt M6x25 hex 10, recorded as fitted in step 1, Seat.',
        '> It may be 1 × seat bolt M6x25 hex 10, recorded as fitted in step 1, Seat: "explain d1 p1 from machine because ..."; else look where it came from: "explain d1 PIECE from PLACE because ...", or "explain d1 unknown NAME because ...".',
      ],
    },
  ],
  'left-out-open': [
    {
      given: [...seat, merged('came off: 2 × pump bolts', 'cleared')],
      says: [
        'w1, left out of a copy, by Ola: came off: 2 × pump bolts.',
        '> Look at the machine and record here what holds, then "settle w1: ..." with how.',
        'w2, left out of a copy, by Ola: cleared.',
        '> Look at the machine and record here what holds, then "settle w2: ..." with how.',
      ],
    },
  ],
  'step-open': [
    {
      given: [job, begin('Seat off'), off(2, 'seat bolts')],
      says: ['Step 1, Seat off: still coming off.', '> "end" when it is off, "take 1" on the way back.'],
    },
    { given: [job, added('Clean the faces')], says: ['Step 1, Clean the faces: not begun.', '> "take 1".'] },
    {
      given: [job, added('Clean the faces'), take(1)],
      says: ['Step 1, Clean the faces: under way.', '> "done 1" when it is complete.'],
    },
    {
      given: [job, added('Turn by hand'), { do: 'fail', step: 1, result: 'it binds', steps: [] }],
      says: ['Step 1, Turn by hand: reopened, to be done again.', '> "take 1".'],
    },
  ],
  ...secondLookLeftovers,
  ...consumableLeftovers,
  ...outingLeftovers,
} satisfies Record<Leftover['code'], (LeftoverCase | UnreachableLeftover)[]>
