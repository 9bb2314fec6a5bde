import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { nextTurn } from '../../../src/plan/tightening.ts'
import {
  backBy,
  backOff,
  clear,
  done,
  endStrip,
  loosening,
  off,
  putOn,
  stop,
  strip,
  torque,
  turn,
  turns,
  undo,
} from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

const easing = given(strip('head off'), loosening([backBy(90), backOff], ['4', '1', '3', '2']))
const next = (job: typeof easing) => {
  const known = job.state.loosenings.get('l1')
  return known && nextTurn(known)
}

const drawing = {
  shape: 'row',
  places: [
    { position: '1', x: 0, y: 0 },
    { position: '2', x: 1, y: 0 },
  ],
}

describe('fasteners are eased', () => {
  test('in the order of loosening, in each pass', () => {
    const { entries } = easing.and(...turns(8))
    const eased = entries.flatMap((entry) =>
      entry.type === 'loosened' ? `${entry.pass}:${entry.fastener}` : [],
    )
    expect(eased).toEqual(['0:4', '0:1', '0:3', '0:2', '1:4', '1:1', '1:3', '1:2'])
  })

  test('in the step that comes off; without one it is begun', () => {
    expect(easing.state.loosenings.get('l1')?.step).toBe(1)
    const { state } = given(loosening([backOff], ['1']))
    expect(state.steps.get(1)).toMatchObject({ title: 'head bolts off', stripping: true })
    expect(state.strip).toBe(1)
  })

  test.each<[string, Command[], Command, string]>([
    ['out of turn', [], turn('1'), 'out-of-turn'],
    ['twice', [turn()], turn('4'), 'turned-already'],
    ['one that is not there', [], turn('9'), 'no-such-fastener'],
    ['when all are, by its number', turns(8), { do: 'tighten', tightening: 'l1' }, 'all-turned'],
    ['when all are', turns(8), turn(), 'no-tightening'],
    ['by a number nobody knows', [], { do: 'tighten', tightening: 'l9' }, 'unknown'],
    ['in no order', [], loosening([backOff], []), 'text-missing'],
    ['in no steps', [], loosening([], ['1']), 'text-missing'],
    ['one of them twice', [], loosening([backOff], ['1', '2', '1']), 'order-wrong'],
    [
      'others than are drawn',
      [],
      { ...loosening([backOff], ['1', '3']), layout: drawing } as Command,
      'order-wrong',
    ],
    ['to a torque', [], loosening([torque(20)], ['1']), 'passes-wrong'],
    ['by no angle', [], loosening([backBy(0)], ['1']), 'count-wrong'],
    ['in 21 steps', [], loosening(Array(21).fill(backOff), ['1']), 'count-wrong'],
  ])('refused: %s', (_, commands, command, code) => {
    easing
      .and(...commands)
      .when(command)
      .refuses(code as 'law')
  })

  test('a break leaves them as they are, and the last one can be taken back', () => {
    expect(next(easing.and(...turns(3), stop(true)))).toMatchObject({
      pass: 0,
      fastener: '2',
      suspect: false,
    })
    expect(next(easing.and(...turns(3), undo))).toMatchObject({ pass: 0, fastener: '3' })
  })

  test('ends the clearance of the first start', () => {
    const whole = given(off(2, 'bolts'), endStrip, putOn('p1'), done(1), clear)
    expect(whole.state.cleared).toBe(true)
    expect(whole.and(loosening([backOff], ['1'])).state.cleared).toBe(false)
  })
})
