import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import type { State } from '../../../src/journal/state.ts'
import { readingsFor, readingsOf } from '../../../src/plan/judging/check-readings.ts'
import type { CheckId } from '../../../src/plan/judging/judging-facts.ts'
import { begin, bought, measured, off, set } from '../../errors/commands.ts'
import { asked, clearances, flatness } from '../../errors/judging-commands.ts'
import { given } from '../../support/journal.ts'

// p1 cylinder head, p2 to p4 cam caps I1 to I3.
const engine: Command[] = [
  begin('Engine off'),
  off(1, 'cylinder head', { kind: 'part' }),
  set('cam caps', ['I1', 'I2', 'I3']),
]

function answered(state: State, id: CheckId) {
  const check = state.checks.get(id)
  if (!check) throw new Error(`no ${id}`)
  const { readings, missing, verdict } = readingsFor(state, check)
  return { by: readings.map(({ measure }) => measure.id), missing, verdict }
}

describe('what was measured for a check', () => {
  test.each<[string, Command[], { by: string[]; missing: string[]; verdict: string | null }]>([
    ['nothing yet', [asked('p1', 'measure', 'flatness')], { by: [], missing: ['flatness'], verdict: null }],
    ['nothing yet, nothing named', [asked('p1', 'measure')], { by: [], missing: ['it'], verdict: null }],
    [
      'before it was asked',
      [flatness('p1', 0.02, 0.03), asked('p1', 'measure', 'flatness')],
      { by: [], missing: ['flatness'], verdict: null },
    ],
    [
      'in its limits',
      [asked('p1', 'measure', 'flatness'), flatness('p1', 0.02, 0.03)],
      { by: ['q1'], missing: [], verdict: 'in' },
    ],
    [
      'out, and again, in: the last of one name counts',
      [asked('p1', 'measure', 'flatness'), flatness('p1', 0.02, 0.09), flatness('p1', 0.02, 0.03)],
      { by: ['q2'], missing: [], verdict: 'in' },
    ],
    [
      'on the limit, with a leaf too thick to tell',
      [asked('p1', 'measure', 'flatness'), flatness('p1', 0.02, 0.05)],
      { by: ['q1'], missing: [], verdict: 'too-close' },
    ],
    [
      'another kind than was asked',
      [asked('p1', 'measure', 'flatness', 'run-out'), flatness('p1', 0.02, 0.03)],
      { by: ['q1'], missing: ['run-out'], verdict: 'in' },
    ],
    [
      'of another piece',
      [asked('p1', 'measure', 'flatness'), flatness('p2', 0.02, 0.03)],
      { by: [], missing: ['flatness'], verdict: null },
    ],
    [
      'of no piece that the record knows',
      [asked('p1', 'measure', 'bore'), measured('bore of the drain', [20.01])],
      { by: [], missing: ['bore'], verdict: null },
    ],
  ])('%s', (_says, commands, expected) => {
    expect(answered(given(...engine, ...commands).state, 'k1')).toEqual(expected)
  })

  test('of a set, each piece by the readings at its own position', () => {
    const { state } = given(
      ...engine,
      asked('p2', 'measure', 'oil clearance'),
      asked('p3', 'measure', 'oil clearance'),
      asked('p4', 'measure', 'oil clearance'),
      // The first of the set stands for it.
      clearances('p2', { I1: 0.03, I3: 0.12 }),
    )
    expect(answered(state, 'k1')).toEqual({ by: ['q1'], missing: [], verdict: 'in' })
    expect(answered(state, 'k2')).toEqual({ by: [], missing: ['oil clearance'], verdict: null })
    expect(answered(state, 'k3')).toEqual({ by: ['q1'], missing: [], verdict: 'out' })
  })

  test('one position measured again alone takes the place of the earlier reading', () => {
    const { state } = given(
      ...engine,
      asked('p4', 'measure', 'oil clearance'),
      clearances('p2', { I1: 0.03, I2: 0.03, I3: 0.12 }),
      clearances('p4', { I3: 0.04 }),
    )
    expect(answered(state, 'k1')).toEqual({ by: ['q2'], missing: [], verdict: 'in' })
  })

  test('of what a part has many of, only what shares a word with it', () => {
    const size = (name: string): Command => ({ ...measured(name, [20.01]), piece: 'p1' }) as Command
    const { state } = given(...engine, asked('p1', 'measure', 'bore'), size('journals of head'))
    expect(answered(state, 'k1')).toEqual({ by: [], missing: ['bore'], verdict: null })
    const more = given(
      ...engine,
      asked('p1', 'measure', 'bore'),
      size('journals of head'),
      size('bores of head'),
    )
    expect(answered(more.state, 'k1')).toEqual({ by: ['q2'], missing: [], verdict: null })
  })

  test('what else is out says nothing about it', () => {
    const { state } = given(
      ...engine,
      asked('p1', 'measure', 'flatness'),
      { ...measured('bore of head', [20.5], { typed: 'max 20', mostMm: 20 }), piece: 'p1' } as Command,
      flatness('p1', 0.02),
    )
    expect(answered(state, 'k1')).toEqual({ by: ['q2'], missing: [], verdict: 'in' })
  })

  test('a set measured without its positions answers for none of it', () => {
    const { state } = given(...engine, asked('p2', 'measure', 'flatness'), flatness('p3', 0.02))
    expect(readingsOf(state, 'p2')).toEqual([])
  })

  test('the piece that takes the home is measured anew', () => {
    const { state } = given(
      ...engine,
      asked('p1', 'measure', 'flatness'),
      flatness('p1', 0.02, 0.03),
      bought(1, 'p1', true),
    )
    expect(state.checks.get('k1')?.piece).toBe('p5')
    expect(answered(state, 'k1')).toEqual({ by: [], missing: ['flatness'], verdict: null })
  })

  test('a check of another kind asks for no reading', () => {
    const { state } = given(...engine, asked('p1', 'look', 'cracks'))
    const check = state.checks.get('k1')
    expect(check && readingsFor(state, check).readings).toEqual([])
  })
})
