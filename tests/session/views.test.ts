import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import {
  brokenOff,
  cardOf,
  containerRows,
  containersOfStep,
  type NextThing,
  planRows,
  type Todo,
  todoOf,
  trialBalance,
} from '../../src/session/views.ts'
import {
  addStep,
  aidIn,
  angle,
  at,
  bag,
  begin,
  clear,
  confirm,
  count,
  done,
  drain,
  endStrip,
  fail,
  fill,
  firstStart,
  look,
  mark,
  matchedOff,
  move,
  off,
  override,
  putOn,
  reopen,
  replace,
  settleAngle,
  slot,
  snug,
  stop,
  strip,
  supply,
  tightening,
  toolOut,
  torque,
  turn,
  turns,
} from '../support/commands.ts'
import { sessionWith, tell } from './support/sessions.ts'

// Three steps, each under the one before: 3 came off last and goes back first.
const three = [
  strip('bracket off'),
  off(6, 'bracket bolt'),
  strip('carrier off'),
  off(4, 'carrier bolt'),
  strip('lever off'),
  off(2, 'lever bolt'),
  endStrip,
]

describe('the way back, step by step', () => {
  const rows = (...commands: Command[]) =>
    planRows(sessionWith(...commands)).map(({ step, standing, again, reasons, overrides }) =>
      [
        `${step.no} ${standing}${again ? ' again' : ''}`,
        ...reasons.map(({ code }) => code),
        ...overrides.map((reason) => `"${reason}"`),
      ].join(', '),
    )

  test.each<[string, Command[], string[]]>([
    ['nothing came off', [], []],
    [
      'what came off last comes first',
      three,
      ['3 ready', '2 blocked, step-before', '1 blocked, step-before'],
    ],
    [
      'the last is still coming off',
      three.slice(0, -1),
      ['3 stripping, still-stripping', '2 blocked, step-before', '1 blocked, step-before'],
    ],
    [
      'one done, one under way',
      [...three, putOn('p3'), done(3), begin(2)],
      ['3 done', '2 underway', '1 blocked, step-before'],
    ],
    [
      'a step with nothing to put back is idle, and is looked through',
      [
        strip('bracket off'),
        off(6, 'bolt'),
        strip('carrier aside'),
        strip('lever off'),
        off(2, 'pin'),
        endStrip,
      ],
      ['3 ready', '2 idle, step-before', '1 blocked, step-before'],
    ],
    [
      'reopened: the one beneath could start, the one on top waits for it',
      [...three, ...[putOn('p3'), done(3), putOn('p2'), done(2), putOn('p1')], reopen(2)],
      ['3 done', '2 redo again', '1 blocked again, step-before'],
    ],
    [
      'a check that failed is to be done again',
      [...three, addStep('measure the bore', { kind: 'measure', before: [3] }), begin(4), fail(4)],
      ['4 redo again', '3 blocked, step-before', '2 blocked, step-before', '1 blocked, step-before'],
    ],
    [
      'every reason at once',
      [...three, move('p2', at('out'), { count: 1 }), count(2, ['p2', 2])],
      ['3 ready', '2 blocked, piece-away, count-open, step-before', '1 blocked, step-before'],
    ],
    [
      'steps of the way back alone stand where they are needed, those after the start last',
      [
        ...three,
        addStep('check the level', { way: 'after-start' }),
        addStep('clean the faces', { kind: 'clean', before: [1] }),
        addStep('grease the pivot', { kind: 'other' }),
      ],
      [
        '3 ready',
        '2 blocked, step-before',
        '5 ready',
        '1 blocked, step-before, step-before',
        '6 ready',
        '4 blocked, not-cleared',
      ],
    ],
    [
      'a start waved through keeps its reason, also when it is under way',
      [
        ...three,
        override('start 2', 'lever is at the shop'),
        begin(2),
        override('finish 2', 'bolts on order'),
      ],
      ['3 ready', '2 underway, "lever is at the shop", "bolts on order"', '1 blocked, step-before'],
    ],
    [
      'a last look is due, then taken',
      [strip('plate off', { hides: true }), off(6, 'bolt'), endStrip],
      ['1 blocked, look-due'],
    ],
    [
      'a look waved through',
      [
        strip('plate off', { hides: true }),
        off(6, 'bolt'),
        endStrip,
        override('look 1', 'seen through the port'),
      ],
      ['1 ready, "seen through the port"'],
    ],
    [
      'a check handed over',
      [...three, addStep('leaks', { way: 'after-start' }), override('check 4', 'the owner looks')],
      [
        '3 ready',
        '2 blocked, step-before',
        '1 blocked, step-before',
        '4 blocked, not-cleared, "the owner looks"',
      ],
    ],
    [
      'what was waved through falls when the step reopens',
      [...three, override('start 2', 'lever is at the shop'), putOn('p2'), reopen(2)],
      ['3 ready', '2 blocked again, step-before', '1 blocked, step-before'],
    ],
  ])('%s', (_, commands, expected) => {
    expect(rows(...commands)).toEqual(expected)
  })
})

/** A thing to do in a few words: `fit p1 6 (c1 6)`. */
function inShort(todo: Todo): string {
  switch (todo.kind) {
    case 'take-out':
      return `take out ${todo.account.piece.id} ${todo.count}`
    case 'fit': {
      const lies = todo.lies.map(({ place, count }) => `${place} ${count}`).join(', ')
      return `fit ${todo.account.piece.id} ${todo.owed} (${lies})${todo.matched ? ' matched' : ''}`
    }
    case 'confirm':
      return `confirm ${todo.mark.id}`
    case 'turn': {
      const { pass, fastener, suspect } = todo.next
      return `turn ${todo.tightening.id} pass ${pass + 1} ${fastener}${suspect ? ' suspect' : ''}`
    }
    case 'settle':
      return `settle ${todo.fault.id}`
    case 'turn-over':
      return `turn over ${todo.turned}/${todo.turns}`
    case 'fill':
      return `fill ${todo.fluid.id}`
    case 'apply':
      return `apply ${todo.consumable.id}`
  }
}

describe('what is still to do in a step', () => {
  const caps = matchedOff(['I1', 'I2', 'I3'], 'cap')
  const full = [
    strip('carrier off'),
    aidIn('rag', 2),
    drain('coolant'),
    mark('arrow forward'),
    off(4, 'bolt'),
    caps,
    off(1, 'plate'),
    tightening('p2', [torque(10)]),
    endStrip,
  ]

  test.each<[string, Command[], string[]]>([
    [
      'aids out, then pieces from the last to the first, a set by its positions, then mark, turns and fluid',
      full,
      [
        'take out p1 2',
        'fit p6 1 (c3 1)',
        'fit p3 1 (c2 1) matched',
        'fit p4 1 (c2 1) matched',
        'fit p5 1 (c2 1) matched',
        'fit p2 4 (c1 4)',
        'confirm m1',
        'turn t1 pass 1 1',
        'fill f1',
      ],
    ],
    [
      'what is done is off the list',
      [
        ...full,
        move('p1', at('toolbox')),
        begin(1),
        putOn('p3', 'I1'),
        putOn('p2', undefined, 3),
        confirm('m1'),
        fill('f1'),
      ],
      [
        'fit p6 1 (c3 1)',
        'fit p4 1 (c2 1) matched',
        'fit p5 1 (c2 1) matched',
        'fit p2 1 (c1 1)',
        'turn t1 pass 1 1',
      ],
    ],
    [
      'what was waved through is off the list',
      [...full, override('m1'), override('t1'), override('f1'), begin(1), putOn('p6'), putOn('p2')],
      ['take out p1 2', 'fit p3 1 (c2 1) matched', 'fit p4 1 (c2 1) matched', 'fit p5 1 (c2 1) matched'],
    ],
    [
      'it lies in several places: the bench first, a spare last',
      [
        strip('bracket off'),
        off(6, 'bolt'),
        endStrip,
        move('p1', at('spare'), { count: 1 }),
        move('p1', at('bench'), { count: 2 }),
        move('p1', at('out'), { count: 1, from: 'c1' }),
      ],
      ['fit p1 6 (bench 2, c1 2, spare 1)'],
    ],
    [
      'some are missing, and none is within reach',
      [strip('bracket off'), off(6, 'bolt', { found: 5 }), endStrip, move('p1', at('out'))],
      ['fit p1 6 ()'],
    ],
    [
      'new ones go back where the old ones came off',
      [
        strip('bracket off'),
        off(6, 'bolt'),
        off(1, 'plate'),
        off(2, 'pin'),
        endStrip,
        replace('p1', 6),
        replace('p2', 1),
      ],
      ['fit p3 2 (c3 2)', 'fit p5 1 (bench 1)', 'fit p4 6 (bench 6)'],
    ],
    [
      'so does the new one of a new one',
      [strip('bracket off'), off(6, 'bolt'), off(1, 'plate'), endStrip, replace('p1', 6), replace('p3', 6)],
      ['fit p2 1 (c2 1)', 'fit p4 6 (bench 6)'],
    ],
    [
      'a new one of a set stands among its mates, in the place of the old one',
      [strip('carrier off'), caps, off(1, 'plate'), endStrip, replace('p1', 1)],
      ['fit p4 1 (c2 1)', 'fit p5 1 (bench 1) matched', 'fit p2 1 (c1 1) matched', 'fit p3 1 (c1 1) matched'],
    ],
    [
      'mates that changed homes go by the homes they have now',
      [
        strip('carrier off'),
        caps,
        endStrip,
        {
          do: 'rehome',
          homes: [
            { piece: 'p1', position: 'I3' },
            { piece: 'p3', position: 'I1' },
          ],
          reason: 'bores measured',
        },
      ],
      ['fit p3 1 (c1 1) matched', 'fit p2 1 (c1 1) matched', 'fit p1 1 (c1 1) matched'],
    ],
    [
      'two sets alike by name, at different homes, with something between them',
      [
        strip('carrier off'),
        matchedOff(['1', '2'], 'cap', { at: 'intake' }),
        off(1, 'plate'),
        matchedOff(['1', '2'], 'cap', { at: 'exhaust' }),
        endStrip,
      ],
      [
        'fit p4 1 (c3 1) matched',
        'fit p5 1 (c3 1) matched',
        'fit p3 1 (c2 1)',
        'fit p1 1 (c1 1) matched',
        'fit p2 1 (c1 1) matched',
      ],
    ],
    [
      'a bolt in doubt',
      [
        strip('bracket off'),
        off(2, 'bolt'),
        tightening('p1', [snug, angle(90)]),
        endStrip,
        putOn('p1'),
        ...turns(3),
        stop(true),
      ],
      ['turn t1 pass 2 2 suspect'],
    ],
    [
      'tools and pieces left off are no work of the step',
      [
        strip('bracket off'),
        toolOut('pin'),
        off(1, 'clip'),
        endStrip,
        { do: 'leave-off', piece: 'p2', reason: 'not needed' },
      ],
      [],
    ],
  ])('%s', (_, commands, expected) => {
    expect(todoOf(sessionWith(...commands), 1).map(inShort)).toEqual(expected)
  })
})

describe('the containers', () => {
  const shelf: Command = { do: 'open-container', kind: 'shelf', name: 'left wall' }
  const crate: Command = { do: 'open-container', kind: 'bin' }
  const into = (container: number, inside: number): Command => ({ do: 'put-container', container, inside })
  const session = () =>
    sessionWith(
      shelf,
      crate,
      { do: 'open-container', kind: 'tray', slots: 4, inside: 2 },
      { do: 'open-container', kind: 'bag', inside: 2 },
      { do: 'open-container', kind: 'bag', inside: 1 },
      into(2, 1),
      strip('carrier off'),
      matchedOff(['1', '2'], 'cap', { into: bag(3) }),
      strip('bracket off'),
      off(6, 'bolt', { into: slot(3, 4) }),
      off(1, 'plate', { into: bag(2) }),
      move('p3', bag(4), { count: 2 }),
      { do: 'void-container', container: 5, reason: 'torn' },
    )

  test('each with what lies in it and what stands in it; void ones are gone', () => {
    const rows = containerRows(session().state).map(({ container, holdings, holds }) => ({
      no: container.no,
      lies: holdings.map(({ piece, place, count }) => `${piece} ${place} ${count}`),
      holds,
    }))
    expect(rows).toEqual([
      { no: 1, lies: [], holds: [2] },
      { no: 2, lies: ['p4 c2 1'], holds: [3, 4] },
      { no: 3, lies: ['p1 c3/1 1', 'p2 c3/2 1', 'p3 c3/4 4'], holds: [] },
      { no: 4, lies: ['p3 c4 2'], holds: [] },
    ])
  })

  test('what stood in a void one stands where that stood', () => {
    const { state } = tell(session(), move('p4', at('bench')), {
      do: 'void-container',
      container: 2,
      reason: 'broken',
    })
    expect(containerRows(state).map(({ container, holds }) => [container.no, holds])).toEqual([
      [1, [3, 4]],
      [3, []],
      [4, []],
    ])
  })

  test.each([
    ['the step of the caps', 1, [3]],
    ['the step of the bolts', 2, [2, 3, 4]],
    ['no such step', 9, []],
  ])('that hold something of %s', (_, step, containers) => {
    expect(containersOfStep(session().state, step)).toEqual(containers)
  })
})

describe('where the job stands', () => {
  test('the next thing, all the way through a small job', () => {
    const session = sessionWith()
    const next = (): string => told(cardOf(session).next)
    const heard: [string, string][] = []
    const work: [string, Command][] = [
      ['open', { do: 'note', kind: 'note', text: 'runs rough' }],
      ['strip 1', strip('plate off', { hides: true })],
      ['bolts', off(2, 'plate bolt')],
      ['strip 2', strip('carrier off')],
      ['rag', aidIn('rag')],
      ['coolant', drain('coolant')],
      ['caps', matchedOff(['1', '2'], 'cap')],
      ['mark', mark('dot up', 'p3')],
      ['passes', tightening('p3', [torque(5), angle(45)])],
      ['lost sight of one', move('p4', at('out'))],
      ['stripped', endStrip],
      ['back from the shop', move('p4', at('bench'))],
      ['check after', addStep('look for leaks', { way: 'after-start' })],
      ['take 2', begin(2)],
      ['rag out', move('p2', at('toolbox'))],
      ['cap 1', putOn('p3', '1')],
      ['cap 2', putOn('p4', '2')],
      ['marked', confirm('m1')],
      ['first pass', turn()],
      ['first pass', turn()],
      ['angle', turn()],
      ['power cut', stop(true)],
      ['it had not turned', settleAngle(false)],
      ['angle', turn()],
      ['filled', fill('f1')],
      ['close 2', done(2)],
      ['look', look(1)],
      ['take 1', begin(1)],
      ['plate on', putOn('p1')],
      ['close 1', done(1)],
      ['a gauge', toolOut('gauge')],
      ['gauge away', move('p5', at('toolbox'))],
      ['close gauge step', endStrip],
      ['clear', clear],
      ['start', firstStart],
      ['check', done(3, 'dry')],
      ['close', { do: 'close-job' }],
    ]
    heard.push(['', next()])
    for (const [what, command] of work) {
      tell(session, command)
      heard.push([what, `${cardOf(session).phase}: ${next()}`])
    }
    expect(heard).toEqual([
      ['', 'begin'],
      ['open', 'strip-down: begin'],
      ['strip 1', 'strip-down: strip 1'],
      ['bolts', 'strip-down: strip 1'],
      ['strip 2', 'strip-down: strip 2'],
      ['rag', 'strip-down: strip 2'],
      ['coolant', 'strip-down: strip 2'],
      ['caps', 'strip-down: strip 2'],
      ['mark', 'strip-down: strip 2'],
      ['passes', 'strip-down: strip 2'],
      ['lost sight of one', 'strip-down: strip 2'],
      ['stripped', 'waiting: blocked 2: piece-away'],
      ['back from the shop', 'waiting: take 2'],
      ['check after', 'waiting: take 2'],
      ['take 2', 'build-up: todo 2: take out p2 1'],
      ['rag out', 'build-up: todo 2: fit p3 1 (c2 1) matched'],
      ['cap 1', 'build-up: todo 2: fit p4 1 (bench 1) matched'],
      ['cap 2', 'build-up: todo 2: confirm m1'],
      ['marked', 'build-up: todo 2: turn t1 pass 1 1'],
      ['first pass', 'build-up: todo 2: turn t1 pass 1 2'],
      ['first pass', 'build-up: todo 2: turn t1 pass 2 1'],
      ['angle', 'build-up: todo 2: turn t1 pass 2 2'],
      ['power cut', 'build-up: todo 2: turn t1 pass 2 2 suspect'],
      ['it had not turned', 'build-up: todo 2: turn t1 pass 2 2'],
      ['angle', 'build-up: todo 2: fill f1'],
      ['filled', 'build-up: close 2'],
      ['close 2', 'build-up: look 1'],
      ['look', 'build-up: take 1'],
      ['take 1', 'build-up: todo 1: fit p1 2 (c1 2)'],
      ['plate on', 'build-up: close 1'],
      ['close 1', 'build-up: clear'],
      ['a gauge', 'build-up: strip 4'],
      ['gauge away', 'build-up: strip 4'],
      ['close gauge step', 'build-up: clear'],
      ['clear', 'ready for first start: start'],
      ['start', 'running in: check 3'],
      ['check', 'running in: close-job'],
      ['close', 'closed: nothing'],
    ])
  })

  test.each<[string, Command[], string]>([
    ['a step reopened is taken first', [...three, putOn('p3'), done(3), reopen(3)], 'take 3'],
    [
      'a strip step open beside a build step: the build step is in hand',
      [...three, begin(3), strip('hose off')],
      'todo 3: fit p3 2 (c3 2)',
    ],
    [
      'all steps done, and yet a tool is out',
      [strip('bracket off'), off(1, 'bolt'), endStrip, begin(1), toolOut('gauge'), putOn('p1'), done(1)],
      'leftovers tool-out',
    ],
    [
      'a check handed over is no longer due',
      [
        strip('bracket off'),
        off(1, 'bolt'),
        endStrip,
        addStep('leaks', { way: 'after-start' }),
        addStep('level', { way: 'after-start' }),
        override('check 2'),
        putOn('p1'),
        done(1),
        clear,
        firstStart,
      ],
      'check 3',
    ],
    [
      'a look whose way is not clear is cleared first: what is in it comes out',
      [strip('plate off', { hides: true }), off(1, 'bolt'), aidIn('rag'), endStrip],
      'todo 1: take out p2 1',
    ],
  ])('%s', (_, commands, expected) => {
    expect(told(cardOf(sessionWith(...commands)).next)).toBe(expected)
  })

  test('the rest of the card', () => {
    const session = sessionWith(
      ...three,
      toolOut('gauge'),
      endStrip,
      move('p2', at('bench'), { count: 3 }),
      begin(3),
      putOn('p3', undefined, 1),
      stop(),
    )
    const { stopped, strip, build, bench, halfway, off, ready } = cardOf(session)
    expect({ strip, build, halfway, off, ready }).toEqual({
      strip: null,
      build: 3,
      halfway: [],
      off: 6 + 4 + 1,
      ready: [],
    })
    expect(bench).toEqual([
      { piece: 'p4', place: 'bench', count: 1 },
      { piece: 'p2', place: 'bench', count: 3 },
    ])
    const last = session.entries().at(-1)
    expect(stopped).toEqual({ n: last?.n, at: last?.at, step: 3, note: 'bolts half down', abrupt: false })
    tell(session, putOn('p3'))
    expect(cardOf(session).stopped).toBeNull()
  })

  test('steps that could start, and pieces that were left off or are one too many', () => {
    const session = sessionWith(
      ...three,
      strip('lamp off', { after: [] }),
      off(2, 'lamp screw'),
      endStrip,
      { do: 'leave-off', piece: 'p1', count: 2, reason: 'not needed' },
      supply('p4', 1),
      putOn('p4'),
    )
    expect(cardOf(session)).toMatchObject({ build: 4, off: 4 + 4 + 2, ready: [3] })
    expect(trialBalance(session).map(({ code }) => code)).toEqual([
      'piece-off',
      'old-lying',
      'piece-off',
      'piece-off',
      'old-lying',
      'step-open',
      'step-open',
      'step-open',
      'step-open',
    ])
  })

  function told(next: NextThing): string {
    switch (next.kind) {
      case 'todo':
        return `todo ${next.step}: ${inShort(next.todo)}`
      case 'blocked':
        return `blocked ${next.step}: ${next.reasons.map(({ code }) => code).join(', ')}`
      case 'leftovers':
        return `leftovers ${next.leftovers.map(({ code }) => code).join(', ')}`
      default:
        return 'step' in next ? `${next.kind} ${next.step}` : next.kind
    }
  }
})

describe('a tightening broken off', () => {
  const ready = [
    strip('bracket off'),
    off(2, 'bolt'),
    tightening('p1', [torque(10), angle(90)]),
    endStrip,
    putOn('p1'),
  ]

  // As the program ends without a word: what `halfway` tells, and whether the next start must say so.
  test.each<[string, Command[], string[], boolean]>([
    ['nothing turned', ready, [], false],
    ['in the middle of a torque pass', [...ready, ...turns(1)], ['pass 1 2'], true],
    ['right before the angle pass', [...ready, ...turns(2)], ['pass 2 1'], true],
    ['in the middle of the angle pass', [...ready, ...turns(3)], ['pass 2 2'], true],
    ['all turned', [...ready, ...turns(4)], [], false],
    ['a torque pass starts again after a stop', [...ready, ...turns(1), stop()], [], false],
    ['stopped with a word, in the angle pass', [...ready, ...turns(3), stop()], ['pass 2 2 suspect'], false],
    [
      'stopped with a word, right before the angle pass',
      [...ready, ...turns(2), stop()],
      ['pass 2 1'],
      false,
    ],
    ['stopped without a word', [...ready, ...turns(2), stop(true)], ['pass 2 1 suspect'], false],
    [
      'after the stop other work went on: the doubt stands, nothing new is in doubt',
      [...ready, ...turns(3), stop(true), { do: 'note', kind: 'note', text: 'light is back' }],
      ['pass 2 2 suspect'],
      false,
    ],
    ['settled, and going on', [...ready, ...turns(3), stop(true), settleAngle(false)], ['pass 2 2'], true],
    ['reopened: all of it is to be done again', [...ready, ...turns(3), reopen(1)], [], false],
  ])('%s', (_, commands, halfway, broken) => {
    const session = sessionWith(...commands)
    const told = cardOf(session).halfway.map(
      ({ next: { pass, fastener, suspect } }) => `pass ${pass + 1} ${fastener}${suspect ? ' suspect' : ''}`,
    )
    expect([told, brokenOff(session.state)]).toEqual([halfway, broken])
  })
})
