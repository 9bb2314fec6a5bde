import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { Gates } from '../../src/plan/gates.ts'
import {
  addStep,
  aidIn,
  at,
  begin,
  confirm,
  count,
  done,
  drain,
  endStrip,
  fill,
  hand,
  look,
  lose,
  mark,
  matchedOff,
  move,
  off,
  override,
  putOn,
  reopen,
  replace,
  snug,
  strip,
  supply,
  tightening,
  toolOut,
  turn,
} from '../support/commands.ts'
import { given } from '../support/journal.ts'

const gatesAfter = (...commands: Command[]) => new Gates(given(...commands).state)
const codes = (reasons: { code: string }[]) => reasons.map(({ code }) => code)

const sixBolts = [off(6, 'bolts'), endStrip]
const away = (place: 'out' | 'supplier' | 'toolbox') => move('p1', at(place), { count: 2 })

describe('why a step may not start, every reason at once', () => {
  test.each<[string, Command[], object[]]>([
    ['nothing in its way', sixBolts, []],
    ['still coming off', [off(6, 'bolts')], [{ code: 'still-stripping', step: 1 }]],
    ['two at the machine shop', [...sixBolts, away('out')], [{ code: 'piece-away', count: 2, place: 'out' }]],
    ['two not here yet', [...sixBolts, away('supplier')], [{ code: 'piece-away', place: 'supplier' }]],
    [
      'two were put into the toolbox: away, not missing',
      [...sixBolts, away('toolbox')],
      [{ code: 'piece-away', place: 'toolbox' }],
    ],
    ['two lost', [...sixBolts, lose('p1', 2)], [{ code: 'piece-short', should: 6, have: 4 }]],
    [
      'one lost, one away: both are said',
      [...sixBolts, lose('p1', 1), move('p1', at('out'), { count: 1, from: 'c1' })],
      [
        { code: 'piece-away', count: 1 },
        { code: 'piece-short', should: 6, have: 5 },
      ],
    ],
    [
      'two were left where they are, the third is missing',
      [off(3, 'hoses', { found: 2, into: at('machine') }), endStrip],
      [{ code: 'piece-short', should: 3, have: 2 }],
    ],
    [
      'a stud snapped, was drilled out, and a new one is here',
      [
        off(2, 'studs', { broken: { kind: 'snapped', count: 1 } }),
        endStrip,
        supply('p1', 1),
        { do: 'settle-fault', fault: 'x1', how: 'drilled out' },
      ],
      [],
    ],
    [
      'a stud snapped, and is passed over',
      [off(2, 'studs', { broken: { kind: 'snapped', count: 1 } }), endStrip, supply('p1', 1), override('x1')],
      [],
    ],
    ['a spare will do', [...sixBolts, move('p1', at('spare'), { count: 2 })], []],
    [
      'single-use bolts that came off',
      [off(6, 'rod bolts', { singleUse: true }), endStrip],
      [{ code: 'piece-used', piece: 'p1' }],
    ],
    ['new ones are here', [off(6, 'rod bolts', { singleUse: true }), endStrip, supply('p1', 6)], []],
    [
      'a stud snapped in its hole',
      [off(2, 'studs', { broken: { kind: 'snapped', count: 1 } }), endStrip, supply('p1', 1)],
      [{ code: 'fault-open', fault: 'x1' }],
    ],
    [
      'a count of its bag is open',
      [...sixBolts, count(1, ['p1', 5])],
      [{ code: 'count-open', difference: 'd1' }],
    ],
    [
      'the bag was emptied onto the bench since: the count is as open as before',
      [...sixBolts, count(1, ['p1', 5]), move('p1', at('bench'))],
      [{ code: 'count-open', difference: 'd1' }],
    ],
    [
      'a stranger is in its bag',
      [...sixBolts, count(1, ['p1', 6], [null, 1])],
      [{ code: 'count-open', difference: 'd1' }],
    ],
  ])('%s', (_, commands, expected) => {
    expect(gatesAfter(...commands).start(1)).toEqual(expected.map((each) => expect.objectContaining(each)))
  })

  test('a check after the first start waits for the start', () => {
    const gates = gatesAfter(addStep('look for leaks', { way: 'after-start' }))
    expect(gates.start(1)).toEqual([{ code: 'not-cleared' }])
  })
})

const chainUnderCover = [
  strip('bracket off'),
  off(4, 'bracket bolts'),
  strip('chain out'),
  off(1, 'chain'),
  endStrip,
]

describe('what must be built before', () => {
  test('the step that came off later', () => {
    const gates = gatesAfter(...chainUnderCover)
    expect(gates.start(1)).toEqual([{ code: 'step-before', step: 2, built: 'open' }])
    expect(gates.ready()).toEqual([2])
  })

  test.each<[string, Command[], string]>([
    ['under way', [begin(2)], 'underway'],
    ['reopened', [putOn('p2'), done(2), reopen(2)], 'redo'],
  ])('which is %s', (_, more, built) => {
    expect(gatesAfter(...chainUnderCover, ...more).start(1)).toEqual([
      { code: 'step-before', step: 2, built },
    ])
  })

  const idleBetween = [
    strip('bracket off'),
    off(4, 'bracket bolts'),
    strip('look inside'),
    strip('look again'),
    strip('chain out'),
    off(1, 'chain'),
    endStrip,
  ]

  test('a step with nothing to put back is done by itself, and the chain behind it still comes first', () => {
    const gates = gatesAfter(...idleBetween)
    expect([2, 3].map((no) => gates.isDone(no))).toEqual([true, true])
    expect(gates.start(1)).toEqual([{ code: 'step-before', step: 4, built: 'open' }])
    expect(gatesAfter(...idleBetween, putOn('p2'), done(4)).start(1)).toEqual([])
  })

  test('a step with nothing to put back that is still open on the strip side holds up', () => {
    const gates = gatesAfter(strip('bracket off'), off(1, 'bracket'), strip('look inside'))
    expect(gates.start(1)).toEqual([{ code: 'step-before', step: 2, built: 'open' }])
  })

  test.each<[string, Command[]]>([
    ['an aid', [aidIn('rag')]],
    ['a mark', [mark('dot up')]],
    ['a fluid', [drain('oil')]],
  ])('a step with only %s has something to do on the way back', (_, inside) => {
    expect(gatesAfter(strip('ports'), ...inside, endStrip).isDone(1)).toBe(false)
  })

  test('a step with only a tool has not', () => {
    expect(gatesAfter(strip('ports'), toolOut('magnet'), endStrip).isDone(1)).toBe(true)
  })
})

describe('why a step under way may not be closed, every reason at once', () => {
  test('all of them, and then none', () => {
    const open = given(
      strip('sump out'),
      off(2, 'bolts'),
      matchedOff(['front', 'rear'], 'dowel', { into: hand }),
      mark('arrow to the front', 'p2'),
      drain('oil'),
      tightening('p1', [snug]),
      aidIn('rag'),
      endStrip,
      move('p1', at('bench'), { count: 1 }),
      override('look 1'),
      begin(1),
    )
    expect(new Gates(open.state).finish(1)).toEqual([
      { code: 'not-home', piece: 'p1', count: 1, place: 'bench' },
      { code: 'not-home', piece: 'p1', count: 1, place: 'c1' },
      { code: 'not-home', piece: 'p2', count: 1, place: 'c1' },
      { code: 'not-home', piece: 'p3', count: 1, place: 'c1' },
      { code: 'mark-open', mark: 'm1' },
      { code: 'tighten-open', tightening: 't1' },
      { code: 'aid-in', piece: 'p4', count: 1, place: 'machine' },
      { code: 'fluid-open', fluid: 'f1' },
    ])
    const closed = open.and(
      putOn('p1'),
      putOn('p2', 'front'),
      putOn('p3', 'rear'),
      confirm('m1'),
      turn(),
      turn(),
      move('p4', at('toolbox')),
      fill('f1'),
    )
    expect(new Gates(closed.state).finish(1)).toEqual([])
  })

  test('a piece with none left anywhere is short, not lying somewhere', () => {
    const gates = gatesAfter(...sixBolts, begin(1), putOn('p1', undefined, 4), lose('p1', 2))
    expect(gates.finish(1)).toEqual([{ code: 'piece-short', piece: 'p1', should: 6, have: 4 }])
  })
})

const camsUnderCover = [
  strip('valve cover off'),
  off(4, 'cover bolts'),
  strip('cams out'),
  off(2, 'caps'),
  aidIn('rag'),
  endStrip,
]
const camsIn = [begin(2), putOn('p2'), move('p3', at('toolbox')), done(2)]

describe('the last look before something is hidden', () => {
  test('is asked for once everything beneath is back', () => {
    expect(codes(gatesAfter(...camsUnderCover).start(1))).toEqual(['step-before'])
    expect(gatesAfter(...camsUnderCover, ...camsIn).start(1)).toEqual([{ code: 'look-due', step: 1 }])
    expect(gatesAfter(...camsUnderCover, ...camsIn, look(1)).start(1)).toEqual([])
  })

  test('names what lies deepest first', () => {
    const gates = gatesAfter(
      strip('valve cover off'),
      strip('cams out'),
      off(2, 'caps'),
      strip('buckets out'),
      off(4, 'buckets'),
      endStrip,
    )
    expect(gates.look(1)).toMatchObject([{ piece: 'p2' }, { piece: 'p1' }])
  })

  test('falls when the step beneath is taken up, though it was put in before', () => {
    const job = given(
      ...camsUnderCover,
      ...camsIn,
      addStep('oil the cams', { before: [1] }),
      override('start 1'),
      look(1),
    )
    expect(job.state.steps.get(1)?.looked).toBe(true)
    expect(job.and(begin(3)).state.steps.get(1)?.looked).toBe(false)
  })

  test('names what is not in order beneath, near and far, and what the step itself put in', () => {
    const gates = gatesAfter(
      strip('valve cover off'),
      off(1, 'cover'),
      aidIn('funnel'),
      ...camsUnderCover.slice(2),
    )
    expect(gates.look(1)).toEqual([
      { code: 'aid-in', piece: 'p4', count: 1, place: 'machine' },
      { code: 'not-home', piece: 'p3', count: 2, place: 'c2' },
      { code: 'aid-in', piece: 'p2', count: 1, place: 'machine' },
    ])
  })

  test.each<[string, Command[]]>([
    ['an aid goes in', [move('p3', at('machine'))]],
    ['another aid goes in', [aidIn('rag')]],
    ['the step beneath is reopened', [reopen(2)]],
    [
      'a step is put in beneath and taken up',
      [addStep('oil the cams', { needs: [2], before: [1] }), begin(3)],
    ],
    ['more comes off beneath', [strip('buckets out', { after: [1] }), off(4, 'buckets')]],
  ])('falls when %s', (_, after) => {
    expect(given(...camsUnderCover, ...camsIn, look(1)).state.steps.get(1)?.looked).toBe(true)
    expect(given(...camsUnderCover, ...camsIn, look(1), ...after).state.steps.get(1)?.looked).toBe(false)
  })

  test.each<[string, Command[]]>([
    ['its own pieces go on', [putOn('p1', undefined, 2)]],
    ['a bolt moves from bag to bench', [move('p1', at('bench'))]],
    ['work goes on in a step that is not beneath it', [addStep('clean the sump'), begin(3)]],
    ['somebody makes a note or stops', [{ do: 'stop', note: '', abrupt: false }]],
  ])('stands while %s', (_, after) => {
    expect(given(...camsUnderCover, ...camsIn, look(1), ...after).state.steps.get(1)?.looked).toBe(true)
  })

  test('is asked for again before the step is closed, when an aid went in while it was under way', () => {
    const gates = gatesAfter(...camsUnderCover, ...camsIn, look(1), putOn('p1'), move('p3', at('machine')))
    expect(gates.finish(1)).toEqual([
      { code: 'aid-in', piece: 'p3', count: 1, place: 'machine' },
      { code: 'look-due', step: 1 },
    ])
  })
})

describe('an override passes over what stood when it was given', () => {
  test('and nothing that came later', () => {
    const short = given(...camsUnderCover, ...camsIn, lose('p1', 1), override('start 1'))
    expect(new Gates(short.state).start(1)).toEqual([])
    expect(codes(new Gates(short.and(reopen(2)).state).start(1))).toEqual(['step-before'])
  })

  test('of a finish: a rag put in afterwards is named', () => {
    const job = given(off(1, 'bolt'), mark('dot up'), endStrip, begin(1), putOn('p1'), override('finish 1'))
    expect(new Gates(job.state).finish(1)).toEqual([])
    expect(codes(new Gates(job.and(aidIn('rag')).state).finish(1))).toEqual(['aid-in'])
  })

  test('of a start before the look was due: the look is still due', () => {
    const gates = gatesAfter(...camsUnderCover, override('start 1'))
    expect(codes(gates.start(1))).toEqual(['aid-in', 'not-home', 'look-due'])
  })
})

describe('standing on the machine', () => {
  test.each<[string, Command[], boolean]>([
    ['not begun', [], false],
    ['under way', [begin(1)], true],
    ['done', [putOn('p1'), done(1)], true],
    ['reopened', [putOn('p1'), done(1), reopen(1)], false],
    [
      'failed, with its pieces still on',
      [putOn('p1'), { do: 'fail', step: 1, result: 'leaks', steps: [] }],
      true,
    ],
  ])('%s', (_, more, standing) => {
    expect(gatesAfter(...sixBolts, ...more).isBuilt(1)).toBe(standing)
  })
})

test('a retired piece asks for nothing, its successor does', () => {
  const gates = gatesAfter(...sixBolts, replace('p1', 4))
  expect(gates.start(1)).toEqual([{ code: 'piece-short', piece: 'p2', should: 6, have: 4 }])
})
