import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import type { EntryType } from '../../src/journal/entry.ts'
import { entryText } from '../../src/words/entries.ts'
import {
  added,
  afterStart,
  angle,
  at,
  begin,
  bench,
  bought,
  done,
  drained,
  drawn,
  eased,
  end,
  filled,
  fitted,
  gasket,
  into,
  job,
  labels,
  look,
  loosening,
  marked,
  measured,
  missed,
  move,
  off,
  open,
  override,
  picture,
  pictures,
  put,
  recount,
  reopen,
  set,
  stopped,
  take,
  tightening,
  tool,
  torque,
  turn,
  turnedByHand,
  turnedOver,
  voided,
} from '../errors/commands.ts'
import { play } from '../errors/play.ts'
import { consumableEntries } from './entries/consumables.ts'
import { judgingEntries } from './entries/judging.ts'
import { mergingEntries } from './entries/merging.ts'
import { arrivalEntries, orderEntries } from './entries/orders.ts'
import { outingEntries } from './entries/outings.ts'
import { replacingEntries, replacingMoves } from './entries/replacing.ts'
import { criticalEntries, secondLookEntries } from './entries/second-looks.ts'

interface Told {
  /** The last command makes the entry. */
  story: Command[]
  says: string
}

const bolts = off(8, 'valve cover bolts', { size: 'M6x25 hex 10' })
const seat = [job, begin('Seat off'), off(8, 'seat bolts', { size: 'M6x25 hex 10' })]
const caps = [job, begin('Cam caps off'), set('cam caps', ['I1', 'I2', 'I3', 'I4'])]
const gear = [
  job,
  begin('Gear off'),
  off(2, 'gear bolts'),
  end,
  tightening('p1', torque, angle),
  fitted('p1'),
]

const byType = {
  opened: [{ story: [job], says: 'job opened: Blue twin top end, the blue twin' }],
  described: [
    {
      story: [job, { do: 'describe', name: 'Blue twin', units: 'us' }],
      says: 'job described: name Blue twin, units US',
    },
    { story: [job, { do: 'describe' }], says: 'job described: as before' },
  ],
  archived: [
    { story: [job, { do: 'archive', archived: true }], says: 'job put in the archive' },
    {
      story: [job, { do: 'archive', archived: true }, { do: 'archive', archived: false }],
      says: 'job taken out of the archive',
    },
  ],
  'strip-began': [
    { story: [job, begin('Seat off')], says: 'step 1 begun: Seat off' },
    {
      story: [job, begin('Seat off'), begin('Valve cover off')],
      says: 'step 2 begun: Valve cover off, after step 1, hides what is beneath',
    },
  ],
  'strip-ended': [{ story: [...seat, end], says: 'all off in step 1, Seat' }],
  'step-added': [
    {
      story: [job, turnedByHand('Turn by hand', 2)],
      says: 'step 1 added on the way back: Turn by hand, 2 full turns',
    },
    {
      story: [...seat, begin('Tank off'), end, added('Clean the faces', [2], [1])],
      says: 'step 3 added on the way back: Clean the faces, once done: step 2, before step 1',
    },
    {
      story: [job, afterStart('Look for leaks', 'after the first warm-up')],
      says: 'step 1 added after the first start: Look for leaks, due after the first warm-up',
    },
  ],
  'step-changed': [
    {
      story: [
        ...seat,
        begin('Tank off'),
        { do: 'change-step', step: 2, title: 'Fuel tank off', after: [], hides: true },
      ],
      says: 'step 2 changed: title Fuel tank off, came off first, hides what is beneath',
    },
    {
      story: [
        ...seat,
        begin('Tank off'),
        { do: 'change-step', step: 1, after: [], needs: [2], hides: false },
      ],
      says: 'step 1 changed: came off first, needs step 2, hides nothing',
    },
    ...criticalEntries,
  ],
  noted: [
    {
      story: [...seat, { do: 'note', kind: 'caution', text: 'spring under load' }],
      says: 'caution for step 1, Seat off: spring under load',
    },
    {
      story: [job, { do: 'note', kind: 'note', text: 'borrowed a puller' }],
      says: 'note: borrowed a puller',
    },
    {
      story: [...seat, { do: 'note', kind: 'minutes', text: 'two bolts seized', minutes: 35 }],
      says: 'worked 35 min for step 1, Seat off: two bolts seized',
    },
    {
      story: [...seat, { do: 'note', kind: 'minutes', text: '35 min', minutes: 35 }],
      says: 'worked 35 min for step 1, Seat off',
    },
  ],

  'container-opened': [
    { story: [job, open('bag')], says: 'opened bag 1' },
    {
      story: [
        job,
        open('shelf'),
        { do: 'open-container', kind: 'tray', slots: 12, name: 'shims', inside: 1 },
      ],
      says: 'opened tray 2 with 12 slots (shims), on shelf 1',
    },
  ],
  'container-put': [
    {
      story: [job, open('bin'), open('bag'), { do: 'put-container', container: 2, inside: 1 }],
      says: 'put bag 2 in bin 1',
    },
    {
      story: [
        job,
        open('bin'),
        open('bag', undefined, 1),
        { do: 'put-container', container: 2, inside: null },
      ],
      says: 'took out bag 2',
    },
  ],
  'container-voided': [
    {
      story: [
        job,
        open('bag'),
        open('bag'),
        { do: 'void-container', container: 1, insteadOf: 2, reason: 'torn' },
      ],
      says: 'label of bag 1 made void, bag 2 in its place: torn',
    },
    {
      story: [job, labels(3), { do: 'void-container', container: 2, insteadOf: 3, reason: 'torn' }],
      says: 'unused label 2 made void, label 3 in its place: torn',
    },
  ],
  'labels-dealt': [
    { story: [job, labels(24)], says: 'labels 1 to 24 dealt to paper, unused yet' },
    { story: [job, open('bag'), labels(1)], says: 'label 2 dealt to paper, unused yet' },
  ],
  'labels-voided': [
    {
      story: [job, labels(24), voided(14, 14)],
      says: 'unused label 14 made void: the sheet is lost',
    },
    {
      story: [
        job,
        labels(24),
        off(2, 'nuts', {}, into(3)),
        open('tag', undefined, undefined, 7),
        open('bag', undefined, undefined, 9),
        voided(1, 10),
      ],
      says: 'unused labels 1, 2, 4 to 6, 8 and 10 made void, 3 are in use and stay: the sheet is lost',
    },
    {
      story: [job, labels(2), off(2, 'nuts', {}, into(1)), voided(1, 2)],
      says: 'unused label 2 made void, 1 is in use and stays: the sheet is lost',
    },
  ],
  'pictures-added': [
    {
      story: [job, open('bag'), pictures(picture('lid.jpg', 1, { container: 1 }))],
      says: '1 picture added, g1: of bag 1',
    },
    {
      story: [
        job,
        open('bag'),
        begin('Lid off'),
        pictures(
          picture('a.jpg', 1, { container: 1 }),
          picture('b.jpg', 2),
          picture('c.jpg', 3, { container: 1 }),
          picture('d.jpg', 4, { step: 1 }),
        ),
      ],
      says: '4 pictures added, g1 to g4: 2 of bag 1, 1 not sorted yet, 1 of step 1, Lid off',
    },
  ],
  'picture-sorted': [
    {
      story: [
        job,
        labels(24),
        pictures(picture('lid.jpg', 1)),
        { do: 'sort-picture', picture: 'g1', belongs: { container: 14 } },
      ],
      says: 'sorted: picture g1 (lid.jpg), of label 14',
    },
    {
      story: [job, pictures(picture('lid.jpg', 1)), { do: 'sort-picture', picture: 'g1', belongs: 'none' }],
      says: 'sorted: picture g1 (lid.jpg), of the job as a whole',
    },
  ],

  'came-off': [
    {
      story: [job, begin('Valve cover off'), open('bag'), bolts],
      says: 'came off: 8 × valve cover bolts M6x25 hex 10, into bag 1',
    },
    {
      story: [job, bolts],
      says: 'came off: 8 × valve cover bolts M6x25 hex 10, into bag 1 (new), beginning step 1, valve cover bolts off',
    },
    {
      story: [job, begin('Cam caps off'), open('tray', 8), set('cam caps', ['I1', 'I2', 'I3'], into(1))],
      says: 'came off: 3 × cam caps I1, I2, I3, into tray 1',
    },
    {
      story: [
        job,
        begin('Cam caps off'),
        open('tray', 8),
        off(1, 'cam caps', { positions: ['I3'] }, into(1, '3')),
      ],
      says: 'came off: cam cap I3, into tray 1, slot 3',
    },
    {
      story: [
        job,
        begin('Exhaust off'),
        open('bag'),
        off(7, 'exhaust studs', { should: 8, broken: { kind: 'snapped', count: 2 } }),
      ],
      says: 'came off: 5 × exhaust studs, into bag 1, 2 snapped, to scrap (x1), 1 of 8 missing as found',
    },
    {
      story: [job, begin('Exhaust off'), off(1, 'clamp', { broken: { kind: 'broken', count: 1 } })],
      says: 'came off: 1 × clamp broken, to scrap',
    },
    {
      story: [job, begin('Exhaust off'), off(0, 'dowels', { should: 2 })],
      says: 'came off: none of dowels, 2 of 2 missing as found',
    },
    {
      story: [job, begin('Head off'), off(1, 'cylinder head', { kind: 'part' }, bench)],
      says: 'came off: 1 × cylinder head, onto the bench',
    },
    {
      story: [
        job,
        begin('Cam caps off'),
        open('bag'),
        off(3, 'cam caps', {
          should: 4,
          positions: ['I1', 'I2', 'I3', 'I4'],
          missingAt: ['I3'],
          brokenAt: ['I2'],
          broken: { kind: 'cracked', count: 1 },
        }),
      ],
      says: 'came off: 2 × cam caps I1, I4, into bag 1, I2 cracked, to scrap (x1), I3 missing as found',
    },
    {
      story: [job, begin('Head off'), off(1, 'cylinder head', {}, at('machine'))],
      says: 'came off: 1 × cylinder head, left on the machine',
    },
  ],
  drained: [{ story: [job, begin('Plug out'), drained('coolant', 2.1)], says: 'drained: coolant 2.1 L' }],
  filled: [
    {
      story: [job, begin('Plug out'), drained('coolant', 2.1), end, take(1), filled('f1', 2.3)],
      says: 'filled: coolant 2.3 L',
    },
  ],
  marked: [
    {
      story: [...caps, marked('arrow to the chain', 'p3')],
      says: 'mark m1 on cam cap I3: arrow to the chain',
    },
    { story: [...caps, marked('cable over the frame')], says: 'mark m1: cable over the frame' },
  ],
  'put-in': [
    { story: [...seat, put('rag', 'inlet port 1')], says: 'put in: 1 × rag at inlet port 1' },
    {
      story: [
        ...seat,
        { do: 'put-in', kind: 'aid', name: 'rags', count: 2, positions: ['inlet 1', 'inlet 2'] },
      ],
      says: 'put in: 1 × rag at inlet 1, 1 × rag at inlet 2',
    },
    { story: [...seat, tool('crank locking pin')], says: 'taken out of the toolbox: 1 × crank locking pin' },
  ],
  moved: [
    ...replacingMoves.moved,
    {
      story: [...seat, open('bag'), move('p1', into(2), { count: 3 })],
      says: 'moved: 3 × seat bolts M6x25 hex 10 from bag 1, into bag 2',
    },
    {
      story: [...seat, move('p1', at('lost'), { count: 1, reason: 'fell into the drain' })],
      says: 'moved: 1 × seat bolt M6x25 hex 10 from bag 1, to lost, because fell into the drain',
    },
    {
      story: [
        ...seat,
        move('p1', bench, { count: 3 }),
        move('p1', { kind: 'new', container: 'tray', slots: 4 }, { count: 8 }),
      ],
      says: 'moved: 5 × seat bolts M6x25 hex 10 from bag 1, into tray 2, slot 1; 3 × seat bolts M6x25 hex 10 from the bench, into tray 2, slot 1 (new)',
    },
  ],
  supplied: [
    {
      story: [job, begin('Seat off'), off(7, 'seat bolts', { should: 8 }), bought(1, 'p1')],
      says: 'new: 1 × seat bolt, onto the bench',
    },
    {
      story: [job, begin('Seat off'), gasket, bought(1, 'p1')],
      says: 'new: 1 × gasket, onto the bench, in place of the old',
    },
    {
      story: [job, begin('Seat off'), gasket, bought(1, 'p1', true, at('supplier'))],
      says: 'new: 1 × gasket, ordered, in place of the old',
    },
    ...arrivalEntries,
  ],

  decided: [
    {
      story: [...seat, { do: 'leave-off', piece: 'p1', count: 2, reason: 'the bracket is gone' }],
      says: 'left off: 2 × seat bolts M6x25 hex 10, because the bracket is gone',
    },
    {
      story: [
        ...seat,
        move('p1', at('lost'), { count: 1, reason: 'fell' }),
        { do: 'accept-lost', piece: 'p1', reason: 'seen in the drain' },
      ],
      says: 'accepted as lost: 1 × seat bolt M6x25 hex 10, because seen in the drain',
    },
    {
      story: [job, begin('Seat off'), gasket, { do: 'use-again', piece: 'p1', reason: 'never under load' }],
      says: 'to be used again: 1 × gasket, because never under load',
    },
  ],
  rehomed: [
    {
      story: [
        ...caps,
        {
          do: 'rehome',
          homes: [
            { piece: 'p3', position: 'I4' },
            { piece: 'p4', position: 'I3' },
          ],
          reason: 'line bored',
        },
      ],
      says: 'homes changed: cam caps p3 to I4, cam caps p4 to I3, because line bored',
    },
  ],
  renamed: [
    {
      story: [...seat, { do: 'rename-piece', piece: 'p1', name: 'saddle bolts' }],
      says: 'renamed: p1, to saddle bolts',
    },
    {
      story: [...caps, { do: 'rename-piece', piece: 'p2', name: 'bearing caps' }],
      says: 'renamed: p1, p2, p3 and p4, at I1, I2, I3 and I4, to bearing caps',
    },
  ],
  settled: [
    {
      story: [
        job,
        off(4, 'studs', { broken: { kind: 'snapped', count: 1 } }),
        { do: 'settle-fault', fault: 'x1', how: 'extracted' },
      ],
      says: 'x1 settled: extracted',
    },
  ],

  'build-began': [{ story: [...seat, end, take(1)], says: 'took up step 1, Seat' }],
  fitted: [
    ...replacingMoves.fitted,
    { story: [...seat, end, take(1), fitted('p1')], says: 'fitted: 8 × seat bolts M6x25 hex 10 from bag 1' },
    {
      story: [...caps, end, fitted({ piece: 'p3', position: 'I3' })],
      says: 'fitted: cam cap I3 from bag 1, taking up step 1, Cam caps',
    },
  ],
  confirmed: [
    {
      story: [
        job,
        begin('Seat off'),
        marked('cable over the frame'),
        end,
        take(1),
        { do: 'confirm', mark: 'm1' },
      ],
      says: 'mark m1 confirmed: cable over the frame',
    },
  ],
  'tightening-set': [
    {
      story: [
        ...seat,
        drawn('p1', 4, '1', '2', '3', '4', '5', '6', '7', '8'),
        {
          do: 'set-tightening',
          piece: 'p1',
          passes: [torque],
          condition: 'dry',
          because: 'the manual has it so',
        },
      ],
      says: 't1 set, Seat: seat bolts: 20 Nm, dry, in order 2, 7, 3, 6, 1, 8, 4, 5 by the rule crosswise, because the manual has it so',
    },
    {
      story: [job, begin('Gear off'), off(2, 'gear bolts'), tightening('p1', torque, angle)],
      says: 't1 set, Gear: gear bolts: 20 Nm, 90 deg, in order 1, 2',
    },
  ],
  tightened: [{ story: [...gear, turn()], says: 't1: fastener 1 through pass 1 of 2: 20 Nm' }],
  'angle-settled': [
    {
      story: [
        ...gear,
        turn(),
        turn(),
        turn(),
        stopped('phone'),
        { do: 'settle-angle', tightening: 't1', turned: false, reason: 'mark in line' },
      ],
      says: 't1: fastener 2 taken as not turned, because mark in line',
    },
  ],
  'condition-said': [
    {
      story: [...gear, { do: 'say-condition', tightening: 't1', condition: 'oiled' }],
      says: 't1: threads oiled',
    },
  ],
  'wrench-chosen': [
    {
      story: [
        ...gear,
        { do: 'choose-wrench', tightening: 't1', wrench: { typed: '5-25 Nm', leastNewtonMetres: 5 } },
      ],
      says: 't1: wrench 5-25 Nm',
    },
  ],
  'torque-missed': [
    {
      story: [...gear, turn(), missed('it keeps turning')],
      says: 't1: fastener 2 never came to its torque (x1): it keeps turning',
    },
  ],
  'loosening-set': [
    {
      story: [...seat, loosening('head bolts', ['2', '1'], eased, eased)],
      says: 'l1 set, to ease head bolts: 90 deg, 90 deg, in order 2, 1',
    },
    {
      story: [job, loosening('head bolts', ['2', '1'], eased)],
      says: 'l1 set, to ease head bolts: 90 deg, in order 2, 1, beginning step 1, head bolts off',
    },
  ],
  loosened: [
    {
      story: [job, loosening('head bolts', ['2', '1'], eased, eased), turn()],
      says: 'l1: fastener 2 eased in pass 1 of 2: 90 deg',
    },
  ],
  'laid-out': [
    {
      story: [...seat, drawn('p1', 4, '1', '2', '3', '4', '5', '6', '7', '8')],
      says: 'drawn: seat bolts, 8 positions, in a grid',
    },
    {
      story: [
        ...caps,
        drawn('p1', 4, 'I1', 'I2', 'I3', 'I4'),
        { do: 'point', piece: 'p1', positions: ['I1'], arrow: 'left' },
        { do: 'point', piece: 'p1', positions: ['I2'], arrow: 'up' },
      ],
      says: 'drawn: cam caps, 4 positions, in a row, arrows left and up',
    },
  ],
  'turned-over': [
    {
      story: [job, turnedByHand('Turn by hand', 2), turnedOver()],
      says: 'one full turn by hand, step 1, Turn by hand, taken up with it',
    },
    {
      story: [job, turnedByHand('Turn by hand', 2), turnedOver(), turnedOver()],
      says: 'one full turn by hand, step 1, Turn by hand',
    },
  ],
  measured: [
    { story: [job, measured('crank pin', [35.99, 35.98])], says: 'q1 measured, crank pin: 35.99, 35.98' },
    {
      story: [
        ...caps,
        {
          do: 'measure',
          name: 'cap bores',
          piece: 'p1',
          measurement: { kind: 'size', readings: [{ mm: 23, typed: '23.00', at: 'I1' }] },
        },
      ],
      says: 'q1 measured, cap bores: I1 23.00',
    },
  ],
  sized: [
    {
      story: [...caps, { do: 'size', sizes: [{ piece: 'p2', size: '2.45' }] }],
      says: 'sized: cam cap I2 is 2.45',
    },
  ],
  slackened: [
    {
      story: [...gear, turn(), { do: 'slacken', tightening: 't1', reason: 'washer upside down' }],
      says: 't1 slackened, every pass to be done again, because washer upside down',
    },
  ],
  looked: [
    {
      story: [job, begin('Valve cover off'), bolts, end, look(1)],
      says: 'last look before step 1, Valve cover',
    },
  ],
  'build-done': [
    { story: [...seat, end, fitted('p1'), done()], says: 'done: step 1, Seat' },
    {
      story: [job, added('Turn by hand'), { do: 'close-step', step: 1, result: 'marks line up' }],
      says: 'done: step 1, Turn by hand: marks line up',
    },
  ],
  failed: [
    {
      story: [
        ...seat,
        end,
        fitted('p1'),
        done(),
        added('Turn by hand'),
        { do: 'fail', step: 2, result: 'it binds', steps: [1] },
      ],
      says: 'failed: step 2, Turn by hand: it binds; reopened step 1; off again: 8 × seat bolts M6x25 hex 10, onto the bench',
    },
    {
      story: [job, added('Turn by hand'), { do: 'fail', step: 1, result: 'it binds', steps: [] }],
      says: 'failed: step 1, Turn by hand: it binds',
    },
  ],
  reopened: [
    {
      story: [...seat, end, fitted('p1'), done(), reopen(1)],
      says: 'reopened step 1, because a washer was left out; off again: 8 × seat bolts M6x25 hex 10, onto the bench',
    },
  ],
  overridden: [
    {
      story: [...seat, move('p1', at('out'), { count: 2 }), end, override('start 1')],
      says: 'overrode the start of step 1, Seat (pieces away), because the gauge is on its way',
    },
  ],

  counted: [
    { story: [...seat, recount(1, ['p1', 8])], says: 'counted bag 1: 8 of 8 seat bolts M6x25 hex 10' },
    {
      story: [...seat, recount(1, ['p1', 7], [null, 2])],
      says: 'counted bag 1: 7 of 8 seat bolts M6x25 hex 10, 1 short (d1); 2 that the record does not have there (d2)',
    },
    {
      story: [...seat, move('p1', at('bench')), recount(1, [null, 0])],
      says: 'counted bag 1: nothing, as in the record',
    },
  ],
  explained: [
    {
      story: [
        ...seat,
        recount(1, ['p1', 7]),
        { do: 'explain', difference: 'd1', how: { kind: 'missing' }, reason: 'not in the tray either' },
      ],
      says: 'd1 explained: missing, 1 × seat bolt M6x25 hex 10 from bag 1, to lost, because not in the tray either',
    },
    {
      story: [
        ...seat,
        recount(1, ['p1', 8], [null, 1]),
        {
          do: 'explain',
          difference: 'd1',
          how: { kind: 'unknown-piece', name: 'black washer' },
          reason: 'nobody knows it',
        },
      ],
      says: 'd1 explained: a piece that nobody knows, 1 × black washer, into bag 1, because nobody knows it',
    },
    {
      story: [
        ...seat,
        recount(1, ['p1', 7]),
        {
          do: 'explain',
          difference: 'd1',
          how: { kind: 'moved', piece: 'p1', other: bench },
          reason: 'seen there',
        },
      ],
      says: 'd1 explained: moved, 1 × seat bolt M6x25 hex 10 from bag 1, onto the bench, because seen there',
    },
  ],

  stopped: [
    {
      story: [...seat, stopped('two bolts still in')],
      says: 'stopped in step 1, Seat off: two bolts still in',
    },
    { story: [job, stopped('', true)], says: 'work broke off' },
  ],
  cleared: [
    {
      story: [job, added('Wash it'), done(1), { do: 'clear' }],
      says: 'cleared for the first start: nothing left over',
    },
  ],
  started: [
    { story: [job, added('Wash it'), done(1), { do: 'clear' }, { do: 'first-start' }], says: 'first start' },
  ],
  closed: [
    {
      story: [
        job,
        added('Wash it'),
        done(1),
        { do: 'clear' },
        { do: 'first-start' },
        { do: 'close-job', note: 'owner checks the level' },
      ],
      says: 'job closed: owner checks the level',
    },
  ],
  undone: [{ story: [...seat, { do: 'undo' }], says: 'entry 3 taken back' }],
  redone: [{ story: [...seat, { do: 'undo' }, { do: 'redo' }], says: 'entry 3 put back in force' }],
  ...consumableEntries,
  ...orderEntries,
  ...secondLookEntries,
  ...outingEntries,
  ...judgingEntries,
  ...replacingEntries,
  ...mergingEntries,
} satisfies Record<EntryType, Told[]>

const rows = Object.entries(byType).flatMap(([type, stories]) =>
  stories.map((told: Told) => [type, told.says, told] as const),
)

describe('one line of history for every kind of entry', () => {
  test.each(rows)('%s: %s', (type, says, { story }) => {
    const { state, entries } = play(story)
    const last = entries.at(-1)
    if (last === undefined) throw new Error('a story without an entry')
    expect(last.type).toBe(type)
    expect(entryText(state, last)).toBe(says)
  })

  test('an entry that was undone is still told, whatever of it the state does not know any more', () => {
    for (const [type, , { story }] of rows) {
      if (['undone', 'redone', 'labels-dealt', 'merged'].includes(type) || story.length === 1) continue
      const { state, entries } = play([...story, { do: 'undo' }])
      const undone = entries.at(-2)
      if (undone === undefined) throw new Error('a story without an entry')
      const text = entryText(state, undone)
      expect(text).not.toMatch(/undefined|null|NaN|\[object/)
      expect(text.length).toBeGreaterThan(8)
    }
  })

  test('what came off and was undone keeps its name; what was moved then has only its number', () => {
    const { state, entries } = play([...seat, { do: 'undo' }])
    expect(entryText(state, entries[2] as never)).toBe(
      'came off: 8 × seat bolts M6x25 hex 10, into bag 1 (new)',
    )
    const moved = play([...seat, move('p1', bench), { do: 'undo' }, { do: 'undo' }])
    expect(entryText(moved.state, moved.entries[3] as never)).toBe(
      'moved: 8 × piece p1 from container 1, onto the bench',
    )
  })

  test('a home changed later does not change what is told of the past', () => {
    const { state, entries } = play([
      ...caps,
      end,
      fitted({ piece: 'p3', position: 'I3' }),
      reopen(1),
      {
        do: 'rehome',
        homes: [
          { piece: 'p3', position: 'I4' },
          { piece: 'p4', position: 'I3' },
        ],
        reason: 'line bored',
      },
    ])
    const told = entries.map((entry) => entryText(state, entry))
    expect(told[2]).toBe('came off: 4 × cam caps I1, I2, I3, I4, into bag 1 (new)')
    expect(told[4]).toBe('fitted: cam cap I3 from bag 1, taking up step 1, Cam caps')
  })
})
