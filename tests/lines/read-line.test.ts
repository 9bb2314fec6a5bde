import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { groupedCode, labelCode } from '../../src/label/code.ts'
import { readLine, readOff } from '../../src/lines/read-line.ts'
import type { Ask, Misreading } from '../../src/lines/reading.ts'
import { verbs } from '../../src/lines/verbs.ts'
import { stateText } from '../support/journal.ts'
import { nothing, told, topEnd } from './told.ts'

const state = told(...topEnd)
const bench = { kind: 'place', place: 'bench' } as const

describe('a line is a command', () => {
  const lines: [string, Command][] = [
    ['begin water pump off', { do: 'begin-strip', title: 'water pump off' }],
    ['begin water pump off after 1', { do: 'begin-strip', title: 'water pump off', after: [1] }],
    ['begin water pump off after 1 and 2', { do: 'begin-strip', title: 'water pump off', after: [1, 2] }],
    ['begin sump off free, does not hide', { do: 'begin-strip', title: 'sump off', after: [], hides: false }],
    ['begin heat shield off hides', { do: 'begin-strip', title: 'heat shield off', hides: true }],
    ['end', { do: 'end-strip' }],
    ['BAG', { do: 'open-container', kind: 'bag' }],
    ['bag exhaust nuts in bin 2', { do: 'open-container', kind: 'bag', name: 'exhaust nuts', inside: 2 }],
    [
      'bag exhaust nuts label 14',
      { do: 'open-container', kind: 'bag', name: 'exhaust nuts', inside: undefined, no: 14 },
    ],
    [
      `bag exhaust nuts in bin 2 label ${groupedCode(labelCode(7, 14))}`,
      { do: 'open-container', kind: 'bag', name: 'exhaust nuts', inside: 2, no: 14 },
    ],
    ['tag label 14 in 2', { do: 'open-container', kind: 'tag', name: undefined, inside: 2, no: 14 }],
    [
      'tray 12 slots cam caps label 14',
      { do: 'open-container', kind: 'tray', slots: 12, name: 'cam caps', no: 14 },
    ],
    ['bag label holder screws', { do: 'open-container', kind: 'bag', name: 'label holder screws' }],
    ['void 5..28 because sheet lost', { do: 'void-labels', from: 5, to: 28, reason: 'sheet lost' }],
    ['void labels 28 to 5 because lost', { do: 'void-labels', from: 5, to: 28, reason: 'lost' }],
    ['void label 5 because torn', { do: 'void-container', container: 5, reason: 'torn' }],
    ['photo g3 to bag 5', { do: 'sort-picture', picture: 'g3', belongs: { container: 5 } }],
    [`photo g3 to ${labelCode(7, 14)}`, { do: 'sort-picture', picture: 'g3', belongs: { container: 14 } }],
    ['photo G3 of step 4', { do: 'sort-picture', picture: 'g3', belongs: { step: 4 } }],
    ['photo g3 to the job', { do: 'sort-picture', picture: 'g3', belongs: 'none' }],
    ['tray 12 slots cam caps', { do: 'open-container', kind: 'tray', slots: 12, name: 'cam caps' }],
    ['put bag 1 in 2', { do: 'put-container', container: 1, inside: 2 }],
    ['put 1 out', { do: 'put-container', container: 1, inside: null }],
    ['void 1 because torn, see 5', { do: 'void-container', container: 1, insteadOf: 5, reason: 'torn' }],
    ['void 1 because torn', { do: 'void-container', container: 1, reason: 'torn' }],
    [
      'move 2 valve cover bolts from bag 1 to bag 5 because they are longer',
      {
        do: 'move',
        piece: 'p1',
        count: 2,
        from: 'c1',
        into: { kind: 'container', no: 5 },
        reason: 'they are longer',
      },
    ],
    ['move cam cap I3 from tray 3 to bench', { do: 'move', piece: 'p11', from: 'c3/3', into: bench }],
    ['move p9 to tray 3/5', { do: 'move', piece: 'p9', into: { kind: 'container', no: 3, slot: '5' } }],
    ['scrap old head gasket', { do: 'move', piece: 'p23', into: { kind: 'place', place: 'scrap' } }],
    ['out cylinder head', { do: 'move', piece: 'p22', into: { kind: 'place', place: 'out' } }],
    [
      'lost 1 valve cover bolt because it fell into the floor drain',
      {
        do: 'move',
        piece: 'p1',
        count: 1,
        into: { kind: 'place', place: 'lost' },
        reason: 'it fell into the floor drain',
      },
    ],
    [
      'take out rag inlet port 2',
      { do: 'move', piece: 'p19', from: 'machine', into: { kind: 'place', place: 'toolbox' } },
    ],
    ['return locking pin', { do: 'move', piece: 'p17', into: { kind: 'place', place: 'toolbox' } }],
    ['rename step 3 head and studs off', { do: 'change-step', step: 3, title: 'head and studs off' }],
    ['step 3 after 1,2', { do: 'change-step', step: 3, after: [1, 2] }],
    ['step 3 after none', { do: 'change-step', step: 3, after: [] }],
    ['step 1 needs 3', { do: 'change-step', step: 1, needs: [3] }],
    ['step 3 hides no', { do: 'change-step', step: 3, hides: false }],
    [
      'add measure valve clearances after 2 before 1',
      {
        do: 'add-step',
        kind: 'measure',
        title: 'measure valve clearances',
        way: 'build',
        needs: [2],
        before: [1],
      },
    ],
    [
      'add later check head bolts due after 500 km',
      {
        do: 'add-step',
        kind: 'check',
        title: 'check head bolts',
        way: 'after-start',
        needs: [],
        before: [],
        due: 'after 500 km',
      },
    ],
    ['take 3', { do: 'begin-build', step: 3 }],
    ['fit cam cap I3', { do: 'fit', fittings: [{ piece: 'p11', position: 'I3' }] }],
    ['fit cam cap i3 at e2', { do: 'fit', fittings: [{ piece: 'p11', position: 'e2' }] }],
    ['fit p11 at i3', { do: 'fit', fittings: [{ piece: 'p11', position: 'I3' }] }],
    ['fit p11', { do: 'fit', fittings: [{ piece: 'p11' }] }],
    ['fit 4 valve cover bolts in step 1', { do: 'fit', step: 1, fittings: [{ piece: 'p1', count: 4 }] }],
    ['fit valve cover bolts 4', { do: 'fit', fittings: [{ piece: 'p1', count: 4 }] }],
    ['fit bag 1', { do: 'fit', fittings: [{ piece: 'p1', count: 8 }] }],
    ['fit 3/2 at I2', { do: 'fit', fittings: [{ piece: 'p10', count: 1, position: 'I2' }] }],
    ['fit coolant hose at pump', { do: 'fit', fittings: [{ piece: 'p4', position: 'pump' }] }],
    ['fit left tap', { do: 'fit', fittings: [{ piece: 'p6', position: 'left tap' }] }],
    ['fit vacuum hose at right tap', { do: 'fit', fittings: [{ piece: 'p8', position: 'right tap' }] }],
    ['confirm m1', { do: 'confirm', mark: 'm1' }],
    [
      'tighten valve cover bolts: 5 Nm, 10 Nm, 90 deg order 1..4,8,7,6,5',
      {
        do: 'set-tightening',
        piece: 'p1',
        passes: [
          { kind: 'torque', newtonMetres: 5, typed: '5 Nm' },
          { kind: 'torque', newtonMetres: 10, typed: '10 Nm' },
          { kind: 'angle', degrees: 90, typed: '90 deg' },
        ],
        order: ['1', '2', '3', '4', '8', '7', '6', '5'],
      },
    ],
    [
      'tighten cam caps: 12 Nm',
      { do: 'set-tightening', piece: 'p9', passes: [{ kind: 'torque', newtonMetres: 12, typed: '12 Nm' }] },
    ],
    ['turn', { do: 'tighten' }],
    ['turn 4 of t1', { do: 'tighten', tightening: 't1', fastener: '4' }],
    [
      'turned t1 yes because the paint mark moved',
      { do: 'settle-angle', tightening: 't1', turned: true, reason: 'the paint mark moved' },
    ],
    [
      'turned t1 no because it did not',
      { do: 'settle-angle', tightening: 't1', turned: false, reason: 'it did not' },
    ],
    [
      'slacken t1 because a washer was left out',
      { do: 'slacken', tightening: 't1', reason: 'a washer was left out' },
    ],
    ['look 3', { do: 'look', step: 3 }],
    ['done', { do: 'close-step' }],
    ['done 3', { do: 'close-step', step: 3 }],
    ['done: 4 % leak-down', { do: 'close-step', result: '4 % leak-down' }],
    ['done 3: 0.05 mm at most', { do: 'close-step', step: 3, result: '0.05 mm at most' }],
    [
      'fail 3: marks one link off, reopen 1,2',
      { do: 'fail', step: 3, result: 'marks one link off', steps: [1, 2] },
    ],
    ['fail 3: leaks', { do: 'fail', step: 3, result: 'leaks', steps: [] }],
    [
      'reopen 2, 3 because a bolt was left over',
      { do: 'reopen', steps: [2, 3], reason: 'a bolt was left over' },
    ],
    ['override start 3 because it is light', { do: 'override', target: 'start 3', reason: 'it is light' }],
    ['override m1 because it wore off', { do: 'override', target: 'm1', reason: 'it wore off' }],
    // From a number pad: in the unit in which it came out.
    ['fill coolant 2', { do: 'fill', fluid: 'f1', litres: 2, typed: '2 L' }],
    ['fill coolant 2,1 l', { do: 'fill', fluid: 'f1', litres: 2.1, typed: '2,1 l' }],
    ['fill f1 2100 ml', { do: 'fill', fluid: 'f1', litres: 2.1, typed: '2100 ml' }],
    ['new 8 head bolts', { do: 'supply', piece: 'p20', count: 8, into: bench, instead: false }],
    [
      'new 8 valve cover bolts instead into bag 1',
      { do: 'supply', piece: 'p1', count: 8, into: { kind: 'container', no: 1 }, instead: true },
    ],
    [
      'new shim E2 size 2.45',
      { do: 'supply', piece: 'p14', count: 1, into: bench, instead: true, size: '2.45' },
    ],
    [
      'leave off 1 valve cover bolt because the hole is plugged',
      { do: 'leave-off', piece: 'p1', count: 1, reason: 'the hole is plugged' },
    ],
    ['accept lost p1 because seen to fall', { do: 'accept-lost', piece: 'p1', reason: 'seen to fall' }],
    ['use again head gasket because no load yet', { do: 'use-again', piece: 'p23', reason: 'no load yet' }],
    [
      'swap shims E1 E2 because of the clearances',
      {
        do: 'rehome',
        homes: [
          { piece: 'p13', position: 'E2' },
          { piece: 'p14', position: 'E1' },
        ],
        reason: 'of the clearances',
      },
    ],
    [
      'rehome p13 to E2 because E2 is scrapped',
      { do: 'rehome', homes: [{ piece: 'p13', position: 'E2' }], reason: 'E2 is scrapped' },
    ],
    ['rename left vacuum hose to short hose', { do: 'rename-piece', piece: 'p5', name: 'short hose' }],
    ['rename p13 to shims, thin', { do: 'rename-piece', piece: 'p13', name: 'shims, thin' }],
    ['settle w2: looked', { do: 'settle-left-out', leftOut: 'w2', how: 'looked' }],
    ['settle W2 because I looked', { do: 'settle-left-out', leftOut: 'w2', how: 'I looked' }],
    ['settle x1: drilled out', { do: 'settle-fault', fault: 'x1', how: 'drilled out' }],
    ['count 1 = 7', { do: 'count', container: 1, counts: [{ piece: 'p1', counted: 7 }] }],
    ['count 2 = 0', { do: 'count', container: 2, counts: [{ piece: null, counted: 0 }] }],
    // Two kinds lie there: one number cannot say how many of each.
    ['count 5 = 7', { do: 'count', container: 5, counts: [] }],
    [
      'count bag 5: head bolts=8, exhaust studs=2, others=1',
      {
        do: 'count',
        container: 5,
        counts: [
          { piece: 'p20', counted: 8 },
          { piece: 'p21', counted: 2 },
          { piece: null, counted: 1 },
        ],
      },
    ],
    [
      'explain d1 missing because searched everywhere',
      { do: 'explain', difference: 'd1', how: { kind: 'missing' }, reason: 'searched everywhere' },
    ],
    [
      'explain d1 head bolts from bag 5 because both were open',
      {
        do: 'explain',
        difference: 'd1',
        how: { kind: 'moved', piece: 'p20', other: { kind: 'container', no: 5 } },
        reason: 'both were open',
      },
    ],
    [
      'explain d1 unknown black washer because nobody knows it',
      {
        do: 'explain',
        difference: 'd1',
        how: { kind: 'unknown-piece', name: 'black washer' },
        reason: 'nobody knows it',
      },
    ],
    ['stop', { do: 'stop', note: '', abrupt: false }],
    ['stop: wrench is in the car', { do: 'stop', note: 'wrench is in the car', abrupt: false }],
    ['clear', { do: 'clear' }],
    ['started', { do: 'first-start' }],
    ['close because handed over', { do: 'close-job', note: 'handed over' }],
    ['undo', { do: 'undo' }],
    ['undo 41', { do: 'undo', entry: 41 }],
    ['redo', { do: 'redo' }],
    ['rename job red twin', { do: 'describe', name: 'red twin' }],
    ['describe machine parallel twin', { do: 'describe', machine: 'parallel twin' }],
    ['units US', { do: 'describe', units: 'us' }],
    ['archive', { do: 'archive', archived: true }],
    ['unarchive', { do: 'archive', archived: false }],
    ['note: gasket stuck', { do: 'note', kind: 'note', text: 'gasket stuck' }],
    ['note gasket stuck', { do: 'note', kind: 'note', text: 'gasket stuck' }],
    ['caution spring under load', { do: 'note', kind: 'caution', text: 'spring under load' }],
    ['took 25 min', { do: 'note', kind: 'minutes', text: '25 min', minutes: 25 }],
    ['mark dot to the left', { do: 'mark', text: 'dot to the left' }],
    ['mark p11: dot outside', { do: 'mark', text: 'dot outside', piece: 'p11' }],
    ['tool torque wrench', { do: 'put-in', kind: 'tool', name: 'torque wrench', count: 1 }],
  ]

  test.each(lines)('%s', (line, command) => {
    const reading = readLine(line, state)
    expect(reading).toMatchObject({ kind: 'commands' })
    if (reading.kind === 'commands') expect(reading.commands).toEqual([command])
  })
})

describe('a line is a question', () => {
  const lines: [string, Ask][] = [
    ['card', { ask: 'card' }],
    ['scan 007 0001 61', { ask: 'scan', text: '007 0001 61' }],
    ['007000161', { ask: 'scan', text: '007000161' }],
    ['007000162', { ask: 'scan', text: '007000162' }],
    ['3', { ask: 'scan', text: '3' }],
    ['back', { ask: 'back' }],
    ['step 3', { ask: 'step', step: 3 }],
    ['where', { ask: 'where', words: '' }],
    ['where is the cam cap I3?', { ask: 'where', words: 'cam cap I3' }],
    ['left', { ask: 'left' }],
    ['log', { ask: 'log', last: null }],
    ['log 5', { ask: 'log', last: 5 }],
    ['qr bag 1', { ask: 'qr', container: 1 }],
    ['qr label 14', { ask: 'qr', container: 14 }],
    ['qr machine', { ask: 'qr', container: 9000 }],
    ['qr step 4', { ask: 'qr', container: 9004 }],
    ['photos', { ask: 'photos', of: null }],
    ['photos bag 1', { ask: 'photos', of: { container: 1 } }],
    ['photos of the bag 1', { ask: 'photos', of: { container: 1 } }],
    ['photos step 4', { ask: 'photos', of: { step: 4 } }],
    ['photos cam cap I3', { ask: 'photos', of: { piece: 'p11' } }],
    ['proposals', { ask: 'proposals' }],
    ['help', { ask: 'help', about: null }],
    ['help take out', { ask: 'help', about: 'take out' }],
  ]

  test.each(lines)('%s', (line, ask) => {
    expect(readLine(line, state)).toEqual({ kind: 'ask', ask })
  })
})

describe('a line is not understood, and says why', () => {
  const lines: [string, Misreading | Partial<Misreading>][] = [
    ['', { code: 'empty' }],
    [' \u001b[2J ', { code: 'empty' }],
    [`note: ${'x'.repeat(600)}`, { code: 'too-long', limit: 499 }],
    ['beginn valve cover off', { code: 'unknown-word', part: 'beginn', nearest: 'begin' }],
    ['tihgten head bolts: 10 Nm', { code: 'unknown-word', part: 'tihgten', nearest: 'tighten' }],
    ['8 M6x25 cover bolts', { code: 'unknown-word', part: '8', nearest: 'off' }],
    ['fuel hose: tank > rail', { code: 'unknown-word', part: 'fuel', nearest: 'off' }],
    ['abracadabra', { code: 'unknown-word', part: 'abracadabra', nearest: null }],
    ['begin', { code: 'missing', verb: 'begin', what: 'TITLE' }],
    ['take', { code: 'missing', verb: 'take', what: 'N' }],
    ['take seven', { code: 'not-a-number', verb: 'take', part: 'seven' }],
    ['reopen 3,x because so', { code: 'not-a-number', part: 'x' }],
    ['reopen 3', { code: 'reason-missing', verb: 'reopen' }],
    ['reopen 3 because', { code: 'reason-missing', verb: 'reopen' }],
    ['lost valve cover bolts', { code: 'reason-missing', verb: 'lost' }],
    ['end now', { code: 'not-understood', verb: 'end', part: 'now' }],
    ['take 3 4', { code: 'not-understood', verb: 'take', part: '4' }],
    ['bag 3', { code: 'not-understood', verb: 'bag', part: '3', nearest: 'scan 3' }],
    [`bag nuts label ${groupedCode(labelCode(8, 3))}`, { code: 'not-understood', verb: 'bag' }],
    ['off 4 nuts into label holder', { code: 'no-such-place', part: 'label holder' }],
    ['photo to bag 5', { code: 'not-understood', nearest: 'photo g3 to bag 5' }],
    ['photo', { code: 'missing', what: 'g3' }],
    ['photo g9..g3 to bag 5', { code: 'not-understood', part: 'g9..g3', nearest: 'photo g3..g9 to bag 5' }],
    ['photo g3, 4 to bag 5', { code: 'not-understood', part: '4' }],
    ['photo g3', { code: 'missing', what: 'to bag 5' }],
    ['photo g3 to bench', { code: 'not-understood', part: 'bench', nearest: 'photo g3 to bag 5' }],
    ['photos rotor', { code: 'no-such-piece', part: 'rotor' }],
    ['qr step 1000', { code: 'not-understood', part: '1000' }],
    ['void 007-0001 because torn', { code: 'no-such-place', part: '007-0001' }],
    ['tray 3', { code: 'not-understood', verb: 'tray', part: '3', nearest: 'scan 3' }],
    ['tray', { code: 'missing', verb: 'tray', what: 'N slots' }],
    ['tray big', { code: 'not-understood', verb: 'tray', part: 'big', nearest: 'tray 12 slots' }],
    ['step 3 hides perhaps', { code: 'not-understood', part: 'perhaps', nearest: 'step 3 hides yes' }],
    [
      'add polish the cover',
      { code: 'not-understood', part: 'polish', nearest: 'add other polish the cover' },
    ],
    ['units parsec', { code: 'not-understood', part: 'parsec' }],
    ['fill coolant 2 bar', { code: 'not-understood', part: '2 bar', nearest: 'fill coolant 2 L' }],
    ['fill brake fluid 1 L', { code: 'no-such-fluid', part: 'brake fluid', known: ['f1 coolant'] }],
    ['tighten head bolts', { code: 'missing', what: ': PASSES' }],
    ['leave cam cap I1 because worn', { code: 'not-understood', part: 'leave cam cap I1 because worn' }],
    ['describe', { code: 'not-understood', form: 'describe machine TEXT' }],
    ['tighten head bolts: 5000 Nm', { code: 'passes', part: '5000 Nm', nearest: null }],
    ['tighten head bolts: 0 Nm', { code: 'passes', part: '0 Nm', nearest: null }],
    [
      'tighten head bolts: 20,40,60 Nm, dry',
      { code: 'passes', part: '20,40,60 Nm', nearest: 'tighten head bolts: 20, 40, 60 Nm, dry' },
    ],
    ['tighten head bolts: 40', { code: 'passes', part: '40', nearest: 'tighten head bolts: 40 Nm' }],
    ['move cylinder head', { code: 'missing', what: 'to PLACE' }],
    ['move cylinder head to the moon', { code: 'no-such-place', part: 'the moon' }],
    ['fit cam cup I3', { code: 'no-such-piece', part: 'cam cup I3' }],
    ['fit p99', { code: 'no-such-piece', part: 'p99', near: [] }],
    ['accept 1,99', { code: 'no-such-proposal', part: '99' }],
    ['off 8 M6x25 bolts 10 Nm', { code: 'bag-line' }],
    ['off 2 dowels into tray', { code: 'no-such-place', part: 'tray' }],
    ['off 2 dowels into bin of covers', { code: 'no-such-place', part: 'bin of covers' }],
    ['off 2 dowels into new tray; 3 nuts', { code: 'no-such-place', part: 'new tray' }],
    ['off heat shield > bench', { code: 'not-understood', nearest: 'off heat shield into bench' }],
    ['off cam caps I1..I4 into new crate', { code: 'no-such-place', part: 'new crate' }],
    ['off 2 dowels into a new tray', { code: 'no-such-place', part: 'a new tray' }],
    ['off 2 dowels into the same bag', { code: 'no-such-place', part: 'the same bag' }],
    ['off 2 dowels into the same', { code: 'no-such-place', part: 'the same' }],
    ['off 2 dowels in a tray', { code: 'no-such-place', part: 'a tray' }],
    ['off 2 dowels onto tray', { code: 'no-such-place', part: 'tray' }],
    ['off heat shield > bag 1', { code: 'not-understood', nearest: 'off heat shield into bag 1' }],
    [
      'off 2 heat shields > tray 3/5',
      { code: 'not-understood', nearest: 'off 2 heat shields into tray 3/5' },
    ],
    [
      'rename throttle 1 to inlet 1',
      {
        code: 'not-understood',
        part: 'throttle 1',
        nearest: 'rehome p5 to inlet 1 because it was written wrongly',
      },
    ],
    [
      'rename left vacuum hose at throttle 1 to inlet 1',
      {
        code: 'not-understood',
        part: 'left vacuum hose at throttle 1',
        nearest: 'rehome p5 to inlet 1 because it was written wrongly',
      },
    ],
    ['rename bag 1 to cover bolts', { code: 'not-understood', part: 'bag 1' }],
    ['count spares = 4', { code: 'not-understood', part: 'spares', form: 'count 5 = 4' }],
    ['off', { code: 'missing', verb: 'off' }],
    ['note', { code: 'missing', verb: 'note', what: 'TEXT' }],
    ['mark:', { code: 'missing', verb: 'mark', what: 'TEXT' }],
  ]

  test.each(lines)('%s', (line, misreading) => {
    expect(readLine(line, state)).toMatchObject({ kind: 'misread', misreading })
  })
})

describe('a bag line', () => {
  test('makes a command of each item, and what is opened for the first takes the rest', () => {
    const reading = readLine('off 6 M8 sump bolts; 2 dowels; oil out 3 L into new bag', state)
    expect(reading).toMatchObject({
      kind: 'commands',
      commands: [
        { do: 'take-off', into: { kind: 'new', container: 'bag' } },
        { do: 'take-off', into: { kind: 'hand' } },
        { do: 'drain', name: 'oil', litres: 3 },
      ],
    })
  })

  test('goes into hand when no place is said, a hose to the bench, and both where the line says', () => {
    const into = (line: string) => {
      const reading = readLine(line, state)
      return reading.kind === 'commands' && reading.commands.map((c) => (c.do === 'take-off' ? c.into : null))
    }
    expect(into('off 6 M8 sump bolts')).toEqual([{ kind: 'hand' }])
    expect(into('off fuel hose: tank > rail')).toEqual([bench])
    expect(into('off fuel hose: tank > rail into new tag')).toEqual([{ kind: 'new', container: 'tag' }])
    expect(into('off valve cover into tag')).toEqual([{ kind: 'new', container: 'tag' }])
    expect(into('off valve cover onto new tag')).toEqual([{ kind: 'new', container: 'tag' }])
    expect(into('off valve cover on the bench')).toEqual([bench])
    expect(into('off valve cover onto bench')).toEqual([bench])
    expect(into('off 2 clips on tray')).toEqual([{ kind: 'hand' }])
    expect(into('off earth strap to shelf bracket')).toEqual([{ kind: 'hand' }])
    expect(into('off 2 clips on tray 3/5')).toEqual([{ kind: 'container', no: 3, slot: '5' }])
    expect(into('off 2 clips in bag 1')).toEqual([{ kind: 'container', no: 1 }])
    expect(into('off 2 clips in a new bag')).toEqual([{ kind: 'new', container: 'bag' }])
    expect(into('off 2 clips in another bag')).toEqual([{ kind: 'new', container: 'bag' }])
    expect(into('off used oil filter into bag 1')).toEqual([{ kind: 'container', no: 1 }])
  })

  test('reads new by itself as a new bag, and not as part of a name', () => {
    expect(readLine('off cam caps I1..I4 into new', state)).toMatchObject({
      commands: [
        {
          item: { name: 'cam caps', positions: ['I1', 'I2', 'I3', 'I4'] },
          into: { kind: 'new', container: 'bag' },
        },
      ],
    })
    expect(readLine('off cam caps I1..I4 into a new one', state)).toMatchObject({
      commands: [{ item: { name: 'cam caps' }, into: { kind: 'new', container: 'bag' } }],
    })
  })

  test('may name a place after each lot, which holds back to the place before', () => {
    const lots = (line: string) => {
      const reading = readOff(line, state, { kind: 'container', no: 3 })
      return (
        reading.kind === 'commands' &&
        reading.commands.map((c) => (c.do === 'take-off' ? [c.item.name, c.into] : c.do))
      )
    }
    expect(lots('2 dowels; 3 nuts into bag 1; 2 washers into new bag; cover; note: oil; into bag 1')).toEqual(
      [
        ['dowels', { kind: 'container', no: 1 }],
        ['nuts', { kind: 'container', no: 1 }],
        ['washers', { kind: 'new', container: 'bag' }],
        ['cover', { kind: 'hand' }],
        'note',
      ],
    )
    expect(lots('2 dowels; 3 nuts;')).toEqual([
      ['dowels', { kind: 'container', no: 3 }],
      ['nuts', { kind: 'container', no: 3 }],
    ])
  })

  test('is read without a verb on the screen of the strip-down, into the place that the screen shows', () => {
    expect(readOff('6 M8 sump bolts', state, { kind: 'container', no: 1 })).toMatchObject({
      commands: [{ do: 'take-off', into: { kind: 'container', no: 1 } }],
    })
    expect(readOff('6 M8 sump bolts into bag 5', state, { kind: 'container', no: 1 })).toMatchObject({
      commands: [{ into: { kind: 'container', no: 5 } }],
    })
  })

  test('keeps a note whole that only sounds like a place', () => {
    expect(readOff('note: oil ran into bag 3', state)).toMatchObject({
      commands: [{ do: 'note', text: 'oil ran into bag 3' }],
    })
    expect(readOff('notes: oil ran into bag 3', state)).toMatchObject({
      commands: [{ do: 'note', text: 'oil ran into bag 3' }],
    })
    expect(readOff('warning: spring flies into bag 3', state)).toMatchObject({
      commands: [{ do: 'note', text: 'spring flies into bag 3' }],
    })
    expect(readOff('note: oil ran into the sump', state)).toMatchObject({
      commands: [{ do: 'note', text: 'oil ran into the sump' }],
    })
  })

  test('keeps a note whole, semicolons and all: what follows one is no piece', () => {
    expect(readOff('note: gasket stuck; stump 3 mm proud', state)).toMatchObject({
      commands: [{ do: 'note', text: 'gasket stuck; stump 3 mm proud' }],
    })
    expect(readLine('mark I3: arrow to chain; dot outside', state)).toMatchObject({
      commands: [{ do: 'mark', text: 'arrow to chain; dot outside', piece: 'p11' }],
    })
    expect(readOff('2 dowels; note: one is bent', state)).toMatchObject({
      commands: [{ do: 'take-off' }, { do: 'note', text: 'one is bent' }],
    })
  })

  test('tells which of a matched set were missing and which broken', () => {
    expect(readOff('cam caps E1..E4, 1 missing at E3, 1 cracked at E4', state)).toMatchObject({
      commands: [
        {
          do: 'take-off',
          item: {
            found: 3,
            should: 4,
            missingAt: ['E3'],
            broken: { kind: 'cracked', count: 1 },
            brokenAt: ['E4'],
          },
        },
      ],
    })
  })

  test('keeps what a mark is about where no piece answers to it', () => {
    expect(readOff('mark flywheel: paint line at the top', state)).toMatchObject({
      commands: [{ do: 'mark', text: 'flywheel: paint line at the top' }],
    })
    expect(readOff('mark I3: arrow to the chain', told(...topEnd.slice(0, 12)))).toMatchObject({
      commands: [{ do: 'mark', text: 'arrow to the chain', piece: 'p11' }],
    })
  })
})

describe('words that several pieces answer to', () => {
  test('are asked about, and the line goes on with the one chosen', () => {
    const reading = readLine('move cam cap to bench', state)
    expect(reading).toMatchObject({
      kind: 'which-piece',
      words: 'cam cap',
      pieces: ['p9', 'p10', 'p11', 'p12'],
    })
    if (reading.kind === 'which-piece') expect(reading.again('p10')).toBe('move p10 to bench')
  })

  test('when the position was shown in the choice, it is said with it', () => {
    const reading = readLine('fit cam cap in step 2', state)
    if (reading.kind !== 'which-piece') throw new Error(reading.kind)
    expect(reading.again('p11')).toBe('fit p11 at I3 in step 2')
    expect(readLine(reading.again('p11'), state)).toMatchObject({
      commands: [{ do: 'fit', step: 2, fittings: [{ piece: 'p11', position: 'I3' }] }],
    })
  })

  test('are the old one and the new one, once both are here', () => {
    const both = told(...topEnd, 'new head gasket')
    expect(readLine('scrap head gasket', both)).toMatchObject({ kind: 'which-piece', pieces: ['p23', 'p24'] })
    expect(readLine('scrap old head gasket', both)).toMatchObject({ commands: [{ piece: 'p23' }] })
    expect(readLine('fit head gasket', both)).toMatchObject({ commands: [{ fittings: [{ piece: 'p24' }] }] })
  })

  test('a cap in hand and a position to put it are not taken for one another', () => {
    expect(readLine('fit cam cap at I2', state)).toMatchObject({ kind: 'which-piece' })
  })
})

test('accept all takes every proposal', () => {
  const reading = readLine('accept all', state)
  if (reading.kind !== 'commands') throw new Error(reading.kind)
  expect(reading.commands.length).toBeGreaterThan(2)
  expect(reading.commands.every(({ do: name }) => name === 'add-step')).toBe(true)
})

describe('whatever is typed', () => {
  const words = verbs.flatMap(({ words }) => words)
  const piece = fc.constantFrom(
    'cam cap',
    'p3',
    'p99',
    'I3',
    'bolts 4',
    '4 bolts',
    'bag 1',
    '1/2',
    '3',
    'hose',
  )
  const glue = fc.constantFrom(
    ' ',
    ' to ',
    ' at ',
    ' in ',
    ' into ',
    ' from ',
    ': ',
    ' because ',
    ' after ',
    '=',
    ', ',
    '; ',
  )
  const line = fc
    .tuple(
      fc.constantFrom(...words),
      fc.array(fc.tuple(glue, fc.oneof(piece, fc.string({ maxLength: 12 }))), { maxLength: 5 }),
    )
    .map(([verb, parts]) => verb + parts.flat().join(''))

  test('reading never throws and changes nothing', () => {
    const before = stateText(state)
    fc.assert(
      fc.property(fc.oneof(line, fc.string({ unit: 'binary', maxLength: 80 })), (text) => {
        for (const reading of [readLine(text, state), readLine(text, nothing), readOff(text, state)]) {
          expect(['commands', 'ask', 'errand', 'which-piece', 'misread']).toContain(reading.kind)
        }
      }),
      { numRuns: 2000 },
    )
    expect(stateText(state)).toBe(before)
  })
})

test('a number that a name begins with is no count', () => {
  const toolbox = told(
    'begin cover off',
    'tool: 10 mm socket',
    'tool: 10 mm spanner',
    'off 10 dowels into bench',
  )
  const read = (line: string) => readLine(line, toolbox)
  expect(read('return 10 mm socket')).toMatchObject({
    commands: [{ do: 'move', piece: 'p1', count: undefined }],
  })
  expect(read('return 1 10 mm spanner')).toMatchObject({ commands: [{ do: 'move', piece: 'p2', count: 1 }] })
  expect(read('scrap 10 dowels')).toMatchObject({ commands: [{ do: 'move', piece: 'p3', count: 10 }] })
})
