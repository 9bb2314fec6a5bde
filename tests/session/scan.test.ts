import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import type { PieceId } from '../../src/ledger/piece.ts'
import { codeOf, type ScanAnswer, scan, type Verdict } from '../../src/session/scan.ts'
import {
  addStep,
  aidIn,
  at,
  bag,
  begin,
  count,
  done,
  endStrip,
  fail,
  look,
  lose,
  matchedOff,
  move,
  off,
  override,
  putOn,
  putOnAll,
  replace,
  slot,
  strip,
  supply,
  toolOut,
  undo,
} from '../support/commands.ts'
import { sessionWith } from './support/sessions.ts'

// Job 7. Its codes, worked out by hand after ISO/IEC 7064 MOD 97-10: 98 less the remainder of
// the seven digits and two noughts by 97, as 7000100 = 97 x 72165 + 95, so 03.
const CODE = { 1: '007000103', 2: '007000200', 3: '007000394', 4: '007000491' }

const openBag: Command = { do: 'open-container', kind: 'bag' }
const foundIn = (container: number, piece: PieceId): Command[] => [
  count(container, [null, 1]),
  {
    do: 'explain',
    difference: 'd1',
    how: { kind: 'moved', piece, other: at('machine') },
    reason: 'ticked, and not fitted',
  },
]
const openShelf: Command = { do: 'open-container', kind: 'shelf', name: 'left wall' }
const into = (container: number, inside: number | null): Command => ({
  do: 'put-container',
  container,
  inside,
})
const voided = (container: number, insteadOf?: number): Command => ({
  do: 'void-container',
  container,
  insteadOf,
  reason: 'label torn',
})

const deal = (count: number): Command => ({ do: 'deal-labels', count })

// Step 2 came off last and goes back first. Bag 1 holds the bracket bolts p1, bag 2 the carrier bolts p2.
const twoSteps = [
  strip('bracket off'),
  off(6, 'bracket bolt'),
  strip('carrier off'),
  off(4, 'carrier bolt'),
  endStrip,
]

describe('what a code is', () => {
  const others = [
    { no: 12, name: 'red mower' },
    { no: 13, name: 'pump' },
  ]
  const bag1: Partial<ScanAnswer> = { kind: 'container', container: 1, code: CODE[1] }

  test.each<[string, string, Command[], Partial<ScanAnswer>]>([
    ['a label, scanned', '007000103', [], bag1],
    ['with the identifier of a scanner before it', ']Q3007000103', [], bag1],
    ['typed in groups', '007 0001 03', [], bag1],
    ['typed with hyphens and a line end', ' 007-0001-03\r', [], bag1],
    ['the number alone', '1', [], bag1],
    ['the number with zeros and spaces', ' 0001 ', [], bag1],
    ['a number that was never given out', '9', [], { kind: 'unknown', container: 9, code: null }],
    ['a whole code that was never given out', '007000491', [], { kind: 'unknown', container: 4, code: null }],
    [
      'a label whose bag was taken back',
      '3',
      [openBag, undo],
      { kind: 'unknown', container: 3, code: CODE[3] },
    ],
    [
      'a void label that another took the place of',
      CODE[3],
      [openBag, openBag, voided(3, 4)],
      { kind: 'void', container: 3, code: CODE[3], insteadOf: 4, reason: 'label torn' },
    ],
    [
      'a void label that nothing took the place of',
      '3',
      [openBag, voided(3)],
      { kind: 'void', container: 3, code: CODE[3], insteadOf: null, reason: 'label torn' },
    ],
    // 12000100 = 97 x 123712 + 36, so 62.
    [
      'a label of a job known here',
      '012000162',
      [],
      { kind: 'other-job', job: 12, container: 1, name: 'red mower' },
    ],
    // 99000200 = 97 x 1020620 + 60, so 38.
    [
      'a label of a job not known here',
      '099000238',
      [],
      { kind: 'other-job', job: 99, container: 2, name: null },
    ],
    ['one digit wrong', '007000203', [], { kind: 'misread', digits: '007000203', near: [CODE[1], CODE[2]] }],
    ['two digits swapped', '007001003', [], { kind: 'misread', digits: '007001003', near: [CODE[1]] }],
    ['a digit dropped', '00700103', [], { kind: 'misread', digits: '00700103', near: [CODE[1]] }],
    ['far from every label of this job', '123456789', [], { kind: 'misread', digits: '123456789', near: [] }],
    ['an unused label', CODE[3], [deal(3)], { kind: 'blank', container: 3, code: CODE[3] }],
    ['the number of an unused label', '4', [deal(3)], { kind: 'blank', container: 4, code: CODE[4] }],
    [
      'an unused label that is void',
      '3',
      [deal(3), voided(3, 4)],
      { kind: 'void', container: 3, code: CODE[3], insteadOf: 4, reason: 'label torn' },
    ],
    [
      'a label that was unused before',
      '4',
      [deal(3), move('p1', bag(4))],
      { kind: 'container', container: 4, code: CODE[4] },
    ],
    [
      'an unused label that was in use and is unused again',
      '4',
      [deal(3), move('p1', bag(4)), undo],
      { kind: 'blank', container: 4 },
    ],
    [
      'near an unused label: one digit wrong',
      '007000395',
      [deal(3)],
      { kind: 'misread', near: [CODE[3], CODE[4]] },
    ],
    // 7900000 = 97 x 81443 + 29, so 69.
    ['the machine', '007900069', [], { kind: 'machine', code: '007900069' }],
    [
      'near the machine: one digit wrong',
      '007900068',
      [],
      { kind: 'misread', near: ['007900069', '007900166', '007900263'] },
    ],
    // 7900200 = 97 x 81445 + 35, so 63.
    ['a step', '007900263', [], { kind: 'step', step: 2, code: '007900263' }],
    [
      'near a step: two digits swapped',
      '007902063',
      [],
      { kind: 'misread', near: ['007900263', '007900069'] },
    ],
    // 7900300 = 97 x 81446 + 38, so 60.
    ['a step that is not there', '007900360', [], { kind: 'unknown', container: 9003, code: null }],
    // 12900000 = 97 x 132989 + 67, so 31; 12900400 = 97 x 132993 + 79, so 19.
    [
      'the machine of another job',
      '012900031',
      [],
      { kind: 'other-job', job: 12, name: 'red mower', bearer: { kind: 'machine' } },
    ],
    [
      'a step of another job',
      '012900419',
      [],
      { kind: 'other-job', job: 12, bearer: { kind: 'step', step: 4 } },
    ],
    ['a word', 'bolts', [], { kind: 'not-a-code', text: 'bolts' }],
    ['nothing', '', [], { kind: 'not-a-code', text: '' }],
    ['nought', '0', [], { kind: 'not-a-code', text: '0' }],
    ['five digits', '12345', [], { kind: 'not-a-code', text: '12345' }],
    ['a number with more behind it', '1 bolt', [], { kind: 'not-a-code', text: '1 bolt' }],
  ])('%s: %j', (_, text, more, answer) => {
    expect(scan(sessionWith(...twoSteps, ...more), text, others)).toMatchObject(answer)
  })

  test('a void label is still near a misread: it may hang on a bag', () => {
    const session = sessionWith(...twoSteps, openBag, voided(3))
    expect(scan(session, '007000395')).toMatchObject({ kind: 'misread', near: [CODE[3]] })
  })

  test.each([1, 2, 3, 4] as const)('container %i has its code', (no) => {
    expect(codeOf(sessionWith().state, no)).toBe(CODE[no])
  })
})

describe('what lies in a container', () => {
  test('pieces by place and step, with those still wanted at home', () => {
    const session = sessionWith(
      { do: 'open-container', kind: 'tray', slots: 6 },
      strip('caps off'),
      matchedOff(['I1', 'I2'], 'cap', { into: bag(1) }),
      strip('bracket off'),
      off(6, 'bolt', { into: slot(1, 5) }),
      toolOut('feeler gauge'),
      move('p4', bag(1)),
      endStrip,
      begin(2),
      putOn('p3', undefined, 6),
      supply('p3', 2, slot(1, 6)),
    )
    expect(scan(session, '1')).toEqual({
      kind: 'container',
      container: 1,
      code: CODE[1],
      inside: [],
      pieces: [
        { piece: 'p1', count: 1, place: 'c1/1', step: 1, wanted: true },
        { piece: 'p2', count: 1, place: 'c1/2', step: 1, wanted: true },
        { piece: 'p4', count: 1, place: 'c1/3', step: 2, wanted: false },
        { piece: 'p3', count: 2, place: 'c1/6', step: 2, wanted: false },
      ],
      verdict: { kind: 'not-in-this-step', step: 2, belongs: [1] },
    })
  })

  test('containers that stand in it, but not those whose label is void', () => {
    const session = sessionWith(
      ...twoSteps,
      openShelf,
      openBag,
      into(1, 3),
      into(2, 3),
      into(4, 3),
      voided(4),
    )
    expect(scan(session, '3')).toMatchObject({ inside: [1, 2], pieces: [], verdict: { kind: 'empty' } })
    expect(scan(session, '1')).toMatchObject({ inside: [] })
  })
})

describe('whether it could go home now', () => {
  const single = (...commands: Command[]) => [strip('bracket off'), off(6, 'bolt'), ...commands, endStrip]
  const snapped = off(2, 'stud', { found: 2, broken: { kind: 'snapped', count: 1 }, into: bag(1) })
  const oldInBag = [...twoSteps, replace('p2', 4)]

  test.each<[string, Command[], number, Verdict]>([
    ['its step could start', twoSteps, 2, { kind: 'fits-now', step: 2 }],
    ['its step is under way', [...twoSteps, begin(2)], 2, { kind: 'fits-now', step: 2 }],
    [
      'another step is under way',
      [...twoSteps, begin(2)],
      1,
      { kind: 'not-in-this-step', step: 2, belongs: [1] },
    ],
    [
      'its step is done, and another over it',
      [
        ...twoSteps,
        begin(2),
        putOn('p2'),
        done(2),
        look(1),
        begin(1),
        putOn('p1'),
        done(1),
        ...foundIn(2, 'p2'),
      ],
      2,
      { kind: 'closed-over', step: 2, undo: [1, 2] },
    ],
    [
      'its step is done, and the last round is in hand',
      [
        ...twoSteps,
        addStep('tip out the bags', { due: 'last' }),
        ...[begin(2), putOn('p2'), done(2), look(1), begin(1), putOn('p1'), done(1), begin(3)],
        ...foundIn(2, 'p2'),
        begin(3),
      ],
      2,
      { kind: 'closed-over', step: 2, undo: [3, 1, 2] },
    ],
    ['nothing lies in it', [...twoSteps, openBag], 3, { kind: 'empty' }],
    ['all of it was taken out', [...twoSteps, move('p2', at('bench'))], 2, { kind: 'empty' }],

    ['old ones that were replaced', oldInBag, 2, { kind: 'nothing-to-fit' }],
    ['old ones, while another step is under way', [...oldInBag, begin(2)], 2, { kind: 'nothing-to-fit' }],
    [
      'one too many',
      [...twoSteps, supply('p2', 1, bag(2)), begin(2), putOn('p2'), done(2)],
      2,
      { kind: 'nothing-to-fit' },
    ],
    ['a tool', [openBag, ...single(toolOut('pin'), move('p2', bag(1)))], 1, { kind: 'nothing-to-fit' }],
    [
      'a gasket that is used up',
      [strip('bracket off'), off(1, 'seal', { singleUse: true }), endStrip],
      1,
      { kind: 'not-again', pieces: [{ piece: 'p1', by: null }] },
    ],
    [
      'a gasket that is used up, and the new one is here',
      [strip('bracket off'), off(1, 'seal', { singleUse: true }), endStrip, supply('p1', 1, at('bench'))],
      1,
      { kind: 'not-again', pieces: [{ piece: 'p1', by: 'p2' }] },
    ],
    [
      'something that nobody knows',
      [
        ...twoSteps,
        openBag,
        count(3, [null, 1]),
        {
          do: 'explain',
          difference: 'd1',
          how: { kind: 'unknown-piece', name: 'washer' },
          reason: 'lay in it',
        },
      ],
      3,
      { kind: 'nothing-to-fit' },
    ],

    [
      'still coming off',
      [strip('bracket off'), off(6, 'bolt')],
      1,
      { kind: 'not-yet', step: 1, reasons: [{ code: 'still-stripping', step: 1 }] },
    ],
    [
      'a step comes before',
      twoSteps,
      1,
      { kind: 'not-yet', step: 1, reasons: [{ code: 'step-before', step: 2, built: 'open' }] },
    ],
    [
      'one is lost',
      single(lose('p1', 1)),
      1,
      { kind: 'not-yet', step: 1, reasons: [{ code: 'piece-short', piece: 'p1', should: 6, have: 5 }] },
    ],
    [
      'some are at the machine shop',
      single(move('p1', at('out'), { count: 2 })),
      1,
      { kind: 'not-yet', step: 1, reasons: [{ code: 'piece-away', piece: 'p1', count: 2, place: 'out' }] },
    ],
    [
      'its mate is used up',
      single(off(1, 'seal', { singleUse: true, into: bag(1) })),
      1,
      { kind: 'not-yet', step: 1, reasons: [{ code: 'piece-used', piece: 'p2' }] },
    ],
    [
      'a stud snapped in its hole',
      single(snapped),
      1,
      {
        kind: 'not-yet',
        step: 1,
        reasons: [
          { code: 'piece-short', piece: 'p2', should: 2, have: 1 },
          { code: 'fault-open', fault: 'x1' },
        ],
      },
    ],
    [
      'a count did not agree',
      single(count(1, ['p1', 5])),
      1,
      { kind: 'not-yet', step: 1, reasons: [{ code: 'count-open', difference: 'd1' }] },
    ],
    [
      'a last look is due, and a rag is in',
      [strip('plate off', { hides: true }), off(6, 'bolt'), aidIn('rag'), endStrip],
      1,
      {
        kind: 'not-yet',
        step: 1,
        reasons: [
          { code: 'aid-in', piece: 'p2', count: 1, place: 'machine' },
          { code: 'look-due', step: 1 },
        ],
      },
    ],
    [
      'a last look is due, and what lies beneath was waved through',
      [
        strip('plate off', { hides: true }),
        off(6, 'bolt'),
        strip('carrier off'),
        off(4, 'carrier bolt'),
        endStrip,
        begin(2),
        override('finish 2'),
        done(2),
      ],
      1,
      {
        kind: 'not-yet',
        step: 1,
        reasons: [
          { code: 'not-home', piece: 'p2', count: 4, place: 'c2' },
          { code: 'look-due', step: 1 },
        ],
      },
    ],
    [
      'all of it at once, nearest to hand first',
      [
        strip('plate off', { hides: true }),
        off(6, 'bolt'),
        off(2, 'stud', { into: bag(1), broken: { kind: 'snapped', count: 1 } }),
        strip('carrier off'),
        off(4, 'carrier bolt'),
        endStrip,
        move('p1', at('out'), { count: 2 }),
        count(1, ['p1', 3], ['p2', 1]),
      ],
      1,
      {
        kind: 'not-yet',
        step: 1,
        reasons: [
          { code: 'piece-away', piece: 'p1', count: 2, place: 'out' },
          { code: 'piece-short', piece: 'p2', should: 2, have: 1 },
          { code: 'fault-open', fault: 'x1' },
          { code: 'count-open', difference: 'd1' },
          { code: 'step-before', step: 2, built: 'open' },
        ],
      },
    ],
    [
      'what kept it back was waved through',
      [...twoSteps, override('start 1')],
      1,
      { kind: 'fits-now', step: 1 },
    ],
    [
      'a check that must come before failed',
      [...twoSteps, addStep('measure the bore', { kind: 'measure', before: [2] }), begin(3), fail(3)],
      2,
      { kind: 'not-yet', step: 2, reasons: [{ code: 'step-before', step: 3, built: 'redo' }] },
    ],
    [
      'its step is under way beside the one in hand, and one was lost meanwhile: the rest fits',
      [
        strip('bracket off'),
        off(6, 'bracket bolt'),
        strip('carrier off', { after: [] }),
        off(4, 'carrier bolt'),
        endStrip,
        begin(1),
        lose('p1', 1),
        begin(2),
        putOn('p2'),
        done(2),
      ],
      1,
      { kind: 'fits-now', step: 1 },
    ],
  ])('%s', (_, commands, container, verdict) => {
    expect(scan(sessionWith(...commands), String(container))).toHaveProperty('verdict', verdict)
  })
})

describe('a bag for several steps names', () => {
  // One bag for the bolts of all three. 3 goes back first, then 2, then 1.
  const three = [
    strip('bracket off'),
    off(6, 'bracket bolt'),
    strip('carrier off'),
    off(4, 'carrier bolt', { into: bag(1) }),
    strip('lever off'),
    off(2, 'lever bolt'),
    endStrip,
  ]

  test.each<[string, Command[], Verdict]>([
    [
      'the first, with what keeps it back, where none could start',
      three,
      { kind: 'not-yet', step: 1, reasons: [{ code: 'step-before', step: 2, built: 'open' }] },
    ],
    [
      'the one that could start',
      [...three, putOnAll(3, { piece: 'p3' }), done(3)],
      { kind: 'fits-now', step: 2 },
    ],
    ['the one in hand', [...three, putOn('p3'), done(3), begin(2)], { kind: 'fits-now', step: 2 }],
    [
      'all it belongs to, where another is in hand',
      [...three, begin(3)],
      { kind: 'not-in-this-step', step: 3, belongs: [1, 2] },
    ],
    [
      'not the one whose pieces are home',
      [...three, putOn('p3'), done(3), putOn('p2'), done(2)],
      { kind: 'fits-now', step: 1 },
    ],
  ])('%s', (_, commands, verdict) => {
    expect(scan(sessionWith(...commands), '1')).toHaveProperty('verdict', verdict)
  })
})
