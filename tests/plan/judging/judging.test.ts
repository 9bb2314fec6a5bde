import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { Gates } from '../../../src/plan/gates.ts'
import { boundTo, judgingReasons, standingOf } from '../../../src/plan/judging/judging.ts'
import type { CheckFacts, CheckId } from '../../../src/plan/judging/judging-facts.ts'
import { leftovers } from '../../../src/plan/leftovers.ts'
import { begin, bought, off, override, set } from '../../errors/commands.ts'
import { asked, judged, passed, together } from '../../errors/judging-commands.ts'
import { given } from '../../support/journal.ts'

// p1 cylinder head, p2 to p4 cam caps I1 to I3, p5 oil pump.
const engine: Command[] = [
  begin('Engine off'),
  off(1, 'cylinder head', { kind: 'part' }),
  set('cam caps', ['I1', 'I2', 'I3']),
  off(1, 'oil pump', { kind: 'part' }),
]

describe('how a piece stands', () => {
  test.each<[string, Command[], string]>([
    ['nobody asked', [], 'not-asked'],
    ['a check is open', [asked('p1')], 'due'],
    ['the check was passed', [asked('p1'), passed(['k1'])], 'accepted'],
    ['the check was waived', [asked('p1'), override('k1')], 'accepted'],
    ['one of two checks was passed', [asked('p1'), asked('p1', 'clean'), passed(['k1'])], 'due'],
    ['it is to be machined', [judged('machine', 'warped', 'p1')], 'machine'],
    ['it is to be replaced', [judged('replace', 'cracked', 'p1')], 'replace'],
    [
      'it was to be replaced, and may stay',
      [judged('replace', 'cracked', 'p1'), judged('fit-again', 'no crack', 'p1')],
      'accepted',
    ],
    ['a verdict answers the open checks', [asked('p1'), judged('fit-again', 'good', 'p1')], 'accepted'],
    ['it is to be cleaned', [asked('p1', 'look'), judged('clean', 'varnish', 'p1')], 'clean'],
    [
      'it was cleaned and looked at',
      [asked('p1', 'look'), judged('clean', 'varnish', 'p1'), passed(['k1'])],
      'accepted',
    ],
    ['a new check after the verdict', [judged('fit-again', 'good', 'p1'), asked('p1')], 'due'],
  ])('%s: %s', (_says, commands, standing) => {
    expect(standingOf(given(...engine, ...commands).state, 'p1')).toBe(standing)
  })

  test('what is condemned is asked nothing more', () => {
    const { state } = given(...engine, asked('p1'), judged('replace', 'cracked', 'p1'))
    expect(judgingReasons(state, 'p1')).toEqual([{ code: 'piece-judged', piece: 'p1', verdict: 'replace' }])
  })

  test('the verdict comes before the checks', () => {
    const { state } = given(...engine, asked('p1'), judged('machine', 'warped', 'p1'))
    expect(judgingReasons(state, 'p1').map(({ code }) => code)).toEqual(['piece-judged', 'check-due'])
  })

  test('a verdict is on the piece, not on the one that takes its home', () => {
    const { state } = given(
      ...engine,
      asked('p1', 'look'),
      judged('replace', 'cracked', 'p1'),
      bought(1, 'p1', true),
    )
    expect(judgingReasons(state, 'p6').filter(({ code }) => code !== 'compare-due')).toEqual([])
  })
})

describe('what belongs together', () => {
  const bound = (...commands: Command[]) => given(...engine, ...commands).state

  test('goes both ways, and over a third', () => {
    const state = bound(together('bored as one', 'p1', 'p2', 'p3'), together('one shaft', 'p3', 'p5'))
    expect(boundTo(state, 'p1').sort()).toEqual(['p2', 'p3', 'p5'])
    expect(boundTo(state, 'p5').sort()).toEqual(['p1', 'p2', 'p3'])
    expect(boundTo(state, 'p4')).toEqual([])
  })

  test('holds for the piece that takes the home', () => {
    const state = bound(together('bored as one', 'p1', 'p2'), bought(1, 'p1', true))
    expect(boundTo(state, 'p6')).toEqual(['p2'])
    expect(boundTo(state, 'p1')).toEqual([])
  })
})

describe('the gates of a whole job', () => {
  /** The checks of a job, which tell how often somebody went through all of them. */
  class Walked extends Map<CheckId, CheckFacts> {
    walks = 0
    override values() {
      this.walks += 1
      return super.values()
    }
  }

  test('say of each piece what it says by itself, and go through the checks once for all of them', () => {
    const told = given(
      ...engine,
      asked('p1'),
      asked('p1', 'clean'),
      asked('p3'),
      passed(['k2']),
      judged('machine', 'worn', 'p5'),
    )
    const checks = new Walked(told.state.checks)
    const gates = new Gates({ ...told.state, checks })
    leftovers(gates)
    for (const no of told.state.steps.keys()) gates.start(no)
    for (const no of told.state.steps.keys()) gates.finish(no)
    const said = [...told.state.ledger.accounts.keys()].map((piece) => gates.judging(piece))
    expect(checks.walks).toBe(1)
    expect(said).toEqual(
      [...told.state.ledger.accounts.keys()].map((piece) => judgingReasons(told.state, piece)),
    )
    expect(said.flat()).toHaveLength(3)
  })
})
