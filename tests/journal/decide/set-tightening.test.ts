import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import {
  alike,
  angle,
  backOff,
  drawn,
  endStrip,
  matchedOff,
  off,
  putOn,
  replace,
  snug,
  strip,
  tightening,
  torque,
  turn,
  witness,
} from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

type Setting = Partial<Extract<Command, { do: 'set-tightening' }>>
const set = (more: Setting = {}): Command => ({
  do: 'set-tightening',
  piece: 'p1',
  passes: [torque(20)],
  ...more,
})

const eight = off(8, 'head bolts')
const inTwoRows = drawn('p1', 4, '1', '2', '3', '4', '5', '6', '7', '8')
const lots = [
  strip('flange off'),
  off(5, 'cover bolts', { size: 'M6x25', alikeAt: ['1', '2', '3', '5', '6'] }),
  off(1, 'cover bolts', { size: 'M6x40', alikeAt: ['4'] }),
]

/** The order that is set, in one line, and what made it. */
function order(commands: Command[], command: Command): string {
  const { entries } = given(...commands)
    .when(command)
    .makes('tightening-set')
  const entry = entries.at(-1)
  if (entry?.type !== 'tightening-set') throw new Error('not set')
  const { order: names, orderBy } = entry.tightening
  return `${names.join(' ')}${orderBy ? ` by ${orderBy}` : ''}`
}

describe('the order of the fasteners', () => {
  test.each<[string, Command[], Command, string]>([
    ['as they are named, without a drawing', [eight], set(), '1 2 3 4 5 6 7 8'],
    ['by the usual rule of a drawing', [eight, inTwoRows], set(), '2 7 3 6 1 8 4 5 by crosswise'],
    ['by another rule', [eight, inTwoRows], set({ by: 'clockwise' }), '1 2 3 4 8 7 6 5 by clockwise'],
    [
      "the manual's goes before any rule",
      [eight, inTwoRows],
      set({ order: ['8', '7', '6', '5', '4', '3', '2', '1'], by: 'spiral' }),
      '8 7 6 5 4 3 2 1 by manual',
    ],
    ['of one bolt there is nothing to rule', [off(1, 'drain plug')], set(), '1'],
    ['of two lots, through both', [...lots], set({ with: ['p2'] }), '1 2 3 4 5 6'],
    [
      'of two lots, on their drawing',
      [...lots, drawn('p2', 3, '1', '2', '3', '6', '5', '4')],
      set({ with: ['p2'] }),
      '2 5 1 4 3 6 by crosswise',
    ],
    [
      'of one lot among two, on their drawing',
      [...lots, drawn('p1', 3, '1', '2', '3', '6', '5', '4')],
      set({ by: 'clockwise' }),
      '1 2 3 5 6 by clockwise',
    ],
    [
      'of a set after one was replaced',
      [matchedOff(['I1', 'I2', 'I3'], 'cap'), drawn('p1', 3, 'I1', 'I2', 'I3'), endStrip, replace('p2', 1)],
      set({ by: 'row' }),
      'I2 I1 I3 by row',
    ],
  ])('%s', (_, commands, command, expected) => {
    expect(order(commands, command)).toBe(expected)
  })

  test.each<[string, Command[], Command, string, object]>([
    ['a rule without a drawing', [eight], set({ by: 'star' }), 'not-laid-out', {}],
    [
      'a rule for another shape',
      [eight, inTwoRows],
      set({ by: 'star' }),
      'rule-not-for-shape',
      { rule: 'star', shape: 'grid' },
    ],
    [
      'two lots of which nobody wrote down which is where',
      [off(2, 'bolts', { size: 'M6x25' }), off(2, 'bolts', { size: 'M6x40' })],
      set({ with: ['p2'] }),
      'no-pattern',
      { fault: { code: 'pattern-positions-unknown', pieces: ['p1', 'p2'] } },
    ],
    ['lots of two patterns', [...lots, off(2, 'studs')], set({ with: ['p3'] }), 'no-pattern', {}],
    ['a lot that nobody knows', lots, set({ with: ['p9'] }), 'unknown', {}],
    ['backed off first', [eight], set({ passes: [backOff, torque(20)] }), 'passes-wrong', {}],
    ['marked before the end', [eight], set({ passes: [witness, torque(20)] }), 'passes-wrong', {}],
  ])('refused: %s', (_, commands, command, code, facts) => {
    given(strip('head off'), ...commands)
      .when(command)
      .refuses(code as 'law', { ...facts })
  })

  test('a pass that goes round has an order of its own, where it is drawn', () => {
    const round = { ...torque(20), round: true as const }
    const passes = [torque(10), round]
    const orders = (...commands: Command[]) =>
      given(...commands, set({ passes }))
        .state.tightenings.get('t1')
        ?.passes.map((pass) => pass.order)
    expect(orders(eight)).toEqual([undefined, undefined])
    expect(orders(eight, inTwoRows)).toEqual([undefined, ['1', '2', '3', '4', '8', '7', '6', '5']])
  })
})

test('what the manual says of the threads, and why the values are right, is kept with it', () => {
  given(eight)
    .when(set({ condition: 'oiled', because: 'a bolt that stretches' }))
    .makes('tightening-set', { tightening: { condition: 'oiled', because: 'a bolt that stretches' } })
})

describe('a tightening of several lots', () => {
  const both = given(...lots, set({ with: ['p2', 'p2', 'p1'] }))

  test('names each lot once, and is set anew whichever is named first', () => {
    expect(both.state.tightenings.get('t1')).toMatchObject({ piece: 'p1', with: ['p2'] })
    const anew = both.and(set({ piece: 'p2', with: ['p1'], passes: [snug] }))
    expect([...anew.state.tightenings.keys()]).toEqual(['t1'])
  })

  test('keeps what was asked of the others when one of them is set alone', () => {
    const anew = both.and(set({ piece: 'p2', passes: [snug] }))
    expect(
      [...anew.state.tightenings.values()].map(({ id, piece, passes }) => [id, piece, passes.length]),
    ).toEqual([
      ['t1', 'p1', 1],
      ['t2', 'p2', 1],
    ])
  })

  test('takes the place of one that was set for a lot alone', () => {
    const { state } = given(...lots, tightening('p2', [snug]), set({ with: ['p2'] }))
    expect([...state.tightenings.keys()]).toEqual(['t1'])
  })

  test('is turned when all lots are home, and cannot be changed then, by any of them', () => {
    const short = both.and(endStrip, putOn('p1'))
    short.when(turn()).refuses('step-blocked', { reasons: [{ code: 'not-home', piece: 'p2' }] })
    const turned = short.and(putOn('p2'), turn())
    turned.when(set({ piece: 'p2', passes: [snug] })).refuses('tightening-begun', { tightening: 't1' })
  })

  test('goes on with the bolts that take the place of the old ones', () => {
    const { state } = both.and(endStrip, replace('p2', 1))
    expect(state.tightenings.get('t1')).toMatchObject({ piece: 'p1', with: ['p3'] })
  })
})

test('a drawing and the tightening made on it stay with a set of which one is replaced', () => {
  const job = given(
    matchedOff(['I1', 'I2'], 'cap'),
    drawn('p1', 2, 'I1', 'I2'),
    set({ passes: [torque(20), angle(90)] }),
    endStrip,
    replace('p1', 1),
    alike('p3'),
  )
  expect(job.state.layouts.map(({ pieces }) => pieces)).toEqual([['p1', 'p2', 'p3']])
  expect(job.state.tightenings.get('t1')?.piece).toBe('p3')
  job
    .and(putOn('p2', 'I2'), putOn('p3', 'I1'))
    .when(turn())
    .makes('tightened', { fastener: job.state.tightenings.get('t1')?.order[0] })
})
