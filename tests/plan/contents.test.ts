import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { accountOf } from '../../src/ledger/ledger.ts'
import {
  contentsByStep,
  isIdle,
  outOfToolbox,
  owedAtHome,
  owing,
  withinReach,
} from '../../src/plan/contents.ts'
import {
  aidIn,
  at,
  bag,
  drain,
  endStrip,
  lose,
  mark,
  move,
  newBag,
  off,
  putOn,
  replace,
  snug,
  strip,
  supply,
  tightening,
  toolOut,
} from '../support/commands.ts'
import { given } from '../support/journal.ts'

const bolts = [off(6, 'bolts'), endStrip]
const stateAfter = (...commands: Command[]) => given(...bolts, ...commands).state

describe('6 bolts belong at home: where those are that are owed, what lies about beyond, what is short', () => {
  test.each<[string, Command[], { lies: [string, number][]; extra: [string, number][]; short: number }]>([
    ['all in their bag', [], { lies: [['c1', 6]], extra: [], short: 0 }],
    ['all home', [putOn('p1')], { lies: [], extra: [], short: 0 }],
    ['one too many', [supply('p1', 1), putOn('p1')], { lies: [], extra: [['c1', 1]], short: 0 }],
    [
      'bench before bag before spare',
      [
        move('p1', at('spare'), { count: 1 }),
        move('p1', at('bench'), { count: 2, from: 'c1' }),
        supply('p1', 1, at('spare')),
      ],
      {
        lies: [
          ['bench', 2],
          ['c1', 3],
          ['spare', 1],
        ],
        extra: [],
        short: 0,
      },
    ],
    [
      'one lost, one scrapped',
      [lose('p1', 1), move('p1', at('scrap'), { count: 1 })],
      { lies: [['c1', 4]], extra: [], short: 2 },
    ],
    [
      'five spares and nothing owed',
      [supply('p1', 5, at('spare')), putOn('p1')],
      { lies: [], extra: [], short: 0 },
    ],
  ])('%s', (_, commands, { lies, extra, short }) => {
    const state = stateAfter(...commands)
    expect(owing(state, accountOf(state.ledger, 'p1'))).toEqual({
      lies: lies.map(([place, count]) => ({ place, count })),
      extra: extra.map(([place, count]) => ({ place, count })),
      short,
    })
  })

  test('the replaced ones are owed nowhere, and lie about', () => {
    const state = stateAfter(replace('p1', 6))
    expect(owing(state, accountOf(state.ledger, 'p1'))).toEqual({
      lies: [],
      extra: [{ place: 'c1', count: 6 }],
      short: 0,
    })
    expect(owedAtHome(state, accountOf(state.ledger, 'p2'))).toBe(6)
  })

  test('within reach are bench, bags and spares, and not what is away, scrapped or lost', () => {
    const state = stateAfter(
      move('p1', newBag, { count: 1 }),
      move('p1', at('out'), { count: 1, from: 'c1' }),
      move('p1', at('scrap'), { count: 1, from: 'c1' }),
      move('p1', at('spare'), { count: 1, from: 'c1' }),
      move('p1', at('bench'), { count: 1, from: 'c1' }),
    )
    expect(withinReach(state, accountOf(state.ledger, 'p1'))).toMatchObject([
      { place: 'bench', count: 1 },
      { place: 'c1', count: 1 },
      { place: 'c2', count: 1 },
      { place: 'spare', count: 1 },
    ])
  })
})

describe('an aid or a tool out of the toolbox', () => {
  test.each<[string, Command, string[]]>([
    ['in the machine', move('p2', at('machine')), ['machine']],
    ['on the bench', move('p2', at('bench')), ['bench']],
    ['in a bag', move('p2', bag(1)), ['c1']],
    ['back', move('p2', at('toolbox')), []],
    ['thrown away', move('p2', at('scrap')), []],
    ['lost: told apart, as a loss', lose('p2'), []],
  ])('%s', (_, command, places) => {
    const start = command.do === 'move' && command.into.kind === 'place' && command.into.place === 'machine'
    const state = stateAfter(strip('ports'), aidIn('rag'), ...(start ? [] : [command]))
    expect(outOfToolbox(state, accountOf(state.ledger, 'p2')).map(({ place }) => place)).toEqual(places)
  })

  test('a bolt is none', () => {
    const state = stateAfter()
    expect(outOfToolbox(state, accountOf(state.ledger, 'p1'))).toEqual([])
  })
})

test('each step with what is its own; what was replaced or left off is nobody’s', () => {
  const state = given(
    strip('valve cover off'),
    off(2, 'bolts'),
    off(1, 'gasket'),
    tightening('p1', [snug]),
    strip('ports'),
    aidIn('rag'),
    toolOut('magnet'),
    drain('coolant'),
    mark('dot up'),
    endStrip,
    replace('p2', 1),
    { do: 'leave-off', piece: 'p1', reason: 'glued now' },
  ).state
  const contents = contentsByStep(state)
  const told = [...contents].map(([no, inside]) => [
    no,
    inside.pieces.map(({ piece }) => piece.id),
    [...inside.aids, ...inside.tools].map(({ piece }) => piece.id),
    [...inside.fluids, ...inside.marks, ...inside.tightenings].map(({ id }) => id),
  ])
  expect(told).toEqual([
    [1, ['p5'], [], ['t1']],
    [2, [], ['p3', 'p4'], ['f1', 'm1']],
  ])
  expect([...contents.values()].map(isIdle)).toEqual([false, false])
})
