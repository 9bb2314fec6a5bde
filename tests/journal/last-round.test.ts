import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import {
  addStep,
  at,
  begin,
  count,
  done,
  endStrip,
  look,
  move,
  off,
  override,
  putOn,
  reopen,
  strip,
} from '../support/commands.ts'
import { given } from '../support/journal.ts'

// A last round holds as a last look does: until something beneath it is worked on.

const because = 'because it is so'
const round = addStep('Tip out every bag and tray', { due: 'last' })
/** Two steps, of which both are home again, and the round as step 3. */
const home: Command[] = [
  strip('lever off', { hides: false }),
  off(2, 'lever bolts'),
  strip('plate out', { hides: false }),
  off(2, 'plate bolts'),
  endStrip,
  round,
  putOn('p2'),
  done(2),
  putOn('p1'),
  done(1),
]
const found: Command = { do: 'count', container: 2, counts: [{ piece: null, counted: 1 }] }
const fromMachine: Command = {
  do: 'explain',
  difference: 'd1',
  how: { kind: 'moved', piece: 'p2', other: { kind: 'place', place: 'machine' } },
  reason: because,
}
const builtOf = (...commands: Command[]) => given(...home, ...commands).state.steps.get(3)?.built

describe('a last round', () => {
  test('waits for what is not done, and holds the first start', () => {
    const early = given(...home.slice(0, -1))
    early
      .when(begin(3))
      .refuses('step-blocked', { reasons: [{ code: 'step-before', step: 1, built: 'underway' }] })
    given(...home)
      .when({ do: 'clear' })
      .refuses('not-clear', { leftovers: [{ code: 'step-open', step: 3 }] })
    given(...home, done(3))
      .when({ do: 'clear' })
      .makes('cleared')
  })

  test('waits for a step that is added after it was planned', () => {
    const later = given(...home, addStep('look at the brake'))
    later
      .when(done(3))
      .refuses('step-blocked', { gate: 'start', reasons: [{ code: 'step-before', step: 4, built: 'open' }] })
    given(...home, addStep('look at the brake'), done(4))
      .when(done(3))
      .makes('build-done')
  })

  test('waits for what comes off after it was planned', () => {
    const later = given(...home, strip('tank off', { hides: false }), off(1, 'tank bolt'), endStrip)
    later
      .when(done(3))
      .refuses('step-blocked', { reasons: [{ code: 'step-before', step: 4, built: 'open' }] })
  })

  test.each<[string, Command[], string]>([
    ['nothing more happened', [], 'done'],
    ['a step was added', [addStep('look at the brake')], 'redo'],
    ['more came off', [strip('tank off', { hides: false }), off(1, 'tank bolt')], 'redo'],
    ['a step was reopened', [reopen(2)], 'redo'],
    ['what was fitted was found in its bag', [found, fromMachine], 'redo'],
    ['something was planned for after the first start', [addStep('later', { way: 'after-start' })], 'done'],
    ['a count agreed', [count(2, [null, 0])], 'done'],
  ])('once done, is %s', (_, commands, built) => {
    expect(builtOf(done(3), ...commands)).toBe(built)
  })

  test('under way it ends in the same way', () => {
    expect(builtOf(begin(3), found)).toBe('underway')
    expect(builtOf(begin(3), found, fromMachine)).toBe('redo')
    expect(given(...home, begin(3), found, fromMachine).state.build).toBeNull()
  })

  test('gone too early by an override, it is to be gone again when the step beneath it is closed', () => {
    const early = [...home.slice(0, -1), override('start 3'), done(3)]
    expect(given(...early).state.steps.get(3)?.built).toBe('done')
    expect(given(...early, done(1)).state.steps.get(3)?.built).toBe('redo')
  })

  test('is not closed over a count that nobody explained', () => {
    const counted = given(...home, begin(3), found)
    counted
      .when(done(3))
      .refuses('step-blocked', { gate: 'finish', reasons: [{ code: 'count-open', difference: 'd1' }] })
  })

  test('what the user puts behind it does not end it', () => {
    const behind = [...home, addStep('seat on', { needs: [3] }), done(3), done(4)]
    expect(given(...behind).state.steps.get(3)?.built).toBe('done')
  })
})

describe('what lay in a container', () => {
  test('is known by what was taken out of it and not put back', () => {
    const taken = (...commands: Command[]) =>
      [...(given(...home, ...commands).state.takenFrom.get(2) ?? [])].map(([piece, { count: out }]) => [
        piece,
        out,
      ])
    expect(taken()).toEqual([['p2', 2]])
    expect(taken(found, fromMachine)).toEqual([['p2', 1]])
    expect(taken(reopen(2), move('p2', { kind: 'container', no: 2 }, { from: 'bench' }))).toEqual([])
    expect(taken(reopen(2), move('p2', at('toolbox'), { from: 'bench' }))).toEqual([['p2', 2]])
  })

  test('was counted on this round until something is put in or taken out, and until the round begins', () => {
    const agreed = (...commands: Command[]) => [...given(...home, ...commands).state.agreed]
    expect(agreed(count(2, [null, 0]))).toEqual([2])
    expect(agreed(count(2, [null, 0]), begin(3))).toEqual([])
    expect(agreed(begin(3), count(1, [null, 0]), count(2, [null, 0]))).toEqual([1, 2])
    expect(agreed(begin(3), count(1, [null, 0]), found)).toEqual([1])
    expect(agreed(begin(3), count(1, [null, 0]), reopen(2))).toEqual([])
  })
})

test('a matched piece that never left its slot is put back into that slot, and what lay loose into the tray', () => {
  const tray: Command[] = [
    strip('caps off', { hides: false }),
    { do: 'open-container', kind: 'tray', slots: 8 },
    {
      do: 'take-off',
      item: { kind: 'part', name: 'cap', found: 2, should: 2, positions: ['I1', 'I2'] },
      into: { kind: 'container', no: 1 },
    },
    endStrip,
    putOn('p1', 'I1'),
    putOn('p2', 'I2'),
    done(1),
    { do: 'count', container: 1, counts: [{ piece: null, counted: 1 }] },
    {
      do: 'explain',
      difference: 'd1',
      how: { kind: 'moved', piece: 'p2', other: { kind: 'place', place: 'machine' } },
      reason: because,
    },
  ]
  expect(given(...tray).state.ledger.accounts.get('p2')?.at).toEqual(new Map([['c1/2', 1]]))
})

test('a hidden step: the round comes after its last look', () => {
  const covered = [
    strip('cover off'),
    off(2, 'bolts'),
    endStrip,
    round,
    look(1),
    putOn('p1'),
    done(1),
    done(2),
  ]
  given(...covered)
    .when({ do: 'clear' })
    .makes('cleared')
})
