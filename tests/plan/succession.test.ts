import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import type { PieceId } from '../../src/ledger/piece.ts'
import { leftOnOld, owedRiders, ridersOf } from '../../src/plan/riders.ts'
import { forebears, heldBeside, isAtHand } from '../../src/plan/succession.ts'
import { alike, at, endStrip, lose, move, off, replace } from '../support/commands.ts'
import { given } from '../support/journal.ts'

const on = (carrier: PieceId, name: string, count = 1, singleUse = false): Command => ({
  do: 'carry',
  on: carrier,
  items: [{ kind: 'fastener', name, count, singleUse }],
})
const wrong = (piece: PieceId): Command => ({
  do: 'compare',
  piece,
  features: [{ feature: 'ports', how: 'wrong' }],
})
const pump = given(off(1, 'pump', { kind: 'part' }), endStrip)

describe('what had the home of a piece before it', () => {
  test('the last first', () => {
    const twice = pump.and(replace('p1', 1), alike('p2'), replace('p2', 1))
    expect(forebears(twice.state, 'p3')).toEqual(['p2', 'p1'])
    expect(forebears(twice.state, 'p1')).toEqual([])
  })

  test('what a new one is held beside is the last that was right, where it is at hand', () => {
    expect(heldBeside(pump.state, 'p1')).toBe('p1')
    expect(heldBeside(pump.and(replace('p1', 1), wrong('p2')).state, 'p2')).toBe('p1')
    expect(heldBeside(pump.and(replace('p1', 1)).state, 'p2')).toBe('p1')
    expect(heldBeside(pump.and(replace('p1', 1), alike('p2')).state, 'p2')).toBe('p2')
    expect(heldBeside(pump.and(lose('p1')).state, 'p1')).toBeNull()
  })

  test.each([
    ['bench', true],
    ['out', true],
    ['spare', false],
    ['scrap', false],
    ['supplier', false],
  ] as const)('at %s it is at hand: %s', (place, isThere) => {
    expect(isAtHand(pump.and(move('p1', at(place))).state, 'p1')).toBe(isThere)
  })

  test('on another piece it is where that is', () => {
    const plug = pump.and(on('p1', 'plug'))
    expect(isAtHand(plug.state, 'p2')).toBe(true)
    expect(isAtHand(plug.and(lose('p1')).state, 'p2')).toBe(false)
  })
})

describe('what sits on a piece', () => {
  const job = pump.and(on('p1', 'studs', 3), on('p1', 'plug'), on('p3', 'ring', 1, true))

  test('and on what sits on it', () => {
    expect(ridersOf(job.state.ledger, 'p1')).toEqual([
      { piece: 'p2', on: 'p1', count: 3 },
      { piece: 'p3', on: 'p1', count: 1 },
      { piece: 'p4', on: 'p3', count: 1 },
    ])
  })

  test('is owed unless it is used, to be replaced, or nothing waits for it', () => {
    const owed = (...commands: Command[]) =>
      owedRiders(job.and(...commands).state, 'p1').map(({ piece }) => piece)
    expect(owed()).toEqual(['p2', 'p3'])
    expect(owed({ do: 'judge', pieces: ['p3'], verdict: 'replace', reason: 'worn' })).toEqual(['p2'])
    expect(owed({ do: 'leave-off', piece: 'p2', reason: 'not needed' })).toEqual(['p3'])
  })

  test('is still on the old one until it goes over', () => {
    const replaced = job.and(replace('p1', 1))
    expect(leftOnOld(replaced.state, 'p5').map(({ piece }) => piece)).toEqual(['p2', 'p3'])
    expect(leftOnOld(replaced.and({ do: 'move-over', from: 'p1', to: 'p5' }).state, 'p5')).toEqual([])
  })
})
