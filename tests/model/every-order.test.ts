import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import {
  aidIn,
  at,
  begin,
  clear,
  confirm,
  count,
  done,
  endStrip,
  fail,
  look,
  lose,
  mark,
  matchedOff,
  move,
  off,
  override,
  putOn,
  redo,
  reopen,
  replace,
  strip,
  supply,
  undo,
} from '../support/commands.ts'
import { openJob, record } from '../support/record.ts'
import { everyOrder } from './every-order.ts'

// The smallest job with something of everything: two steps, two common bolts, a matched pair, an aid, a mark.
const apart = record([
  openJob,
  strip('valve cover off'),
  off(2, 'cover bolts'),
  strip('cams out'),
  matchedOff(['I1', 'I2'], 'cam cap'),
  mark('dot to the left', 'p2'),
  aidIn('rag'),
  endStrip,
]).entries

/** Two commands away from the first start. */
const nearlyHome = record(
  [
    begin(2),
    putOn('p2', 'I1'),
    putOn('p3', 'I2'),
    confirm('m1'),
    move('p4', at('toolbox')),
    done(2),
    look(1),
    putOn('p1'),
  ],
  apart,
).entries

const build: Command[] = [
  begin(1),
  begin(2),
  putOn('p1'),
  putOn('p2', 'I1'),
  putOn('p2', 'I2'),
  putOn('p3', 'I1'),
  putOn('p3', 'I2'),
  confirm('m1'),
  move('p4', at('toolbox')),
  look(1),
  done(1),
  done(2),
  clear,
  reopen(2),
]
const because = 'because it is so'
const leaveOff = (piece: `p${number}`): Command => ({ do: 'leave-off', piece, count: 1, reason: because })
/** In milliseconds, on a machine that has other things to do: nothing is said about speed. */
const MOST = 120_000

const giveUp: Command = { do: 'accept-lost', piece: 'p1', reason: because }

test('building up in every order that the gates allow, until nothing new can be reached', () => {
  const explored = everyOrder(apart, build, 30)
  expect(explored.isWhole).toBe(true)
  expect(explored.cleared).toBeGreaterThan(0)
})

describe('every order', () => {
  const themes: [string, Command[]][] = [
    [
      'with bolts lost, found, given up, bought and scrapped',
      [
        lose('p1', 1),
        move('p1', at('bench'), { from: 'lost' }),
        giveUp,
        leaveOff('p1'),
        supply('p1', 1),
        move('p1', at('scrap'), { count: 1 }),
        putOn('p1', undefined, 1),
      ],
    ],
    [
      'with overrides, failed checks and an aid put in again',
      [
        override('start 1'),
        override('finish 2'),
        override('look 1'),
        override('m1'),
        reopen(1),
        fail(2),
        fail(2, 2),
        move('p4', at('machine')),
      ],
    ],
    [
      'with homes changed and pieces replaced',
      [
        {
          do: 'rehome',
          homes: [
            { piece: 'p2', position: 'I2' },
            { piece: 'p3', position: 'I1' },
          ],
          reason: because,
        },
        replace('p2', 1),
        putOn('p5', 'I1'),
        putOn('p5', 'I2'),
        move('p2', at('scrap')),
        reopen(1),
        leaveOff('p3'),
        move('p3', at('spare')),
      ],
    ],
    [
      'with counts that agree, do not agree and are explained',
      [
        count(1, ['p1', 1]),
        count(1, ['p1', 2]),
        count(1, [null, 1]),
        { do: 'explain', difference: 'd1', how: { kind: 'missing' }, reason: because },
        { do: 'explain', difference: 'd1', how: { kind: 'unknown-piece', name: 'washer' }, reason: because },
        giveUp,
        leaveOff('p1'),
        move('p5', at('scrap')),
      ],
    ],
    ['with undo and redo', [undo, redo, move('p4', at('machine')), reopen(1)]],
  ]

  test.each(themes)(
    'of five commands, or six of few, from all apart, %s',
    (_, more) => {
      // The orders grow with what there is to do.
      const explored = everyOrder(apart, [...build, ...more], more.length > 4 ? 5 : 6)
      expect(explored.states).toBeGreaterThan(100)
    },
    MOST,
  )

  test.each(themes)(
    'of six commands from nearly home, %s: cleared only when nothing is unexplained',
    (_, more) => {
      const explored = everyOrder(nearlyHome, [...build, ...more], 6)
      expect(explored.cleared).toBeGreaterThan(0)
    },
    MOST,
  )
})
