import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { balance } from '../../../src/ledger/ledger.ts'
import {
  at,
  begin,
  bought,
  done,
  end,
  fitted,
  move,
  off,
  override,
  put,
  reopen,
  set,
  take,
} from '../../errors/commands.ts'
import {
  asked,
  clearances,
  flatness,
  found,
  judged,
  judgedSome,
  listed,
  passed,
  together,
} from '../../errors/judging-commands.ts'
import { given } from '../../support/journal.ts'

// p1 cylinder head, p2 to p4 cam caps I1 to I3, p5 pump studs, p6 oil pump, p7 a rag in a port.
const engine: Command[] = [
  begin('Engine off'),
  off(1, 'cylinder head', { kind: 'part' }),
  set('cam caps', ['I1', 'I2', 'I3']),
  off(8, 'pump studs'),
  off(1, 'oil pump', { kind: 'part' }),
  put('rag', 'inlet port'),
  end,
]
const told = (...commands: Command[]) => given(...engine, ...commands)

describe('checks', () => {
  test('nothing is asked of an aid, of what was replaced, or of what never was', () => {
    told().when(asked('p7')).refuses('not-for-home', { piece: 'p7' })
    told(bought(1, 'p6', true))
      .when(asked('p6'))
      .refuses('not-for-home', { piece: 'p6' })
    told().when(asked('p99')).refuses('unknown', { what: 'piece' })
    told().when({ do: 'ask-checks', checks: [] }).refuses('text-missing')
  })

  test('are numbered one after the other, and words that say nothing are left out', () => {
    const checks = [
      { piece: 'p1' as const, kind: 'look' as const, what: [' cracks ', ' ', 'score'] },
      { piece: 'p2' as const, kind: 'clean' as const, what: [] },
    ]
    told(asked('p1'))
      .when({ do: 'ask-checks', checks })
      .makes('checks-set', {
        checks: [
          { id: 'k2', piece: 'p1', kind: 'look', what: ['cracks', 'score'] },
          { id: 'k3', piece: 'p2', kind: 'clean', what: [] },
        ],
      })
  })

  test('are passed once', () => {
    told(asked('p1'), passed(['k1']))
      .when(passed(['k1']))
      .refuses('check-done', { check: 'k1' })
    told(asked('p1'))
      .when(passed(['k1', 'k1']))
      .makes('checks-done', { checks: ['k1'] })
    told()
      .when(passed(['k1']))
      .refuses('unknown', { what: 'check' })
    told().when(passed([])).refuses('text-missing')
  })

  test('of several, none is passed where one may not be', () => {
    const two = told(asked('p1'), asked('p1', 'measure', 'flatness'))
    two.when(passed(['k1', 'k2'])).refuses('check-unmeasured', { check: 'k2', missing: ['flatness'] })
  })

  test('too close to call is passed with words, out of limits is not', () => {
    const close = told(asked('p1', 'measure', 'flatness'), flatness('p1', 0.02, 0.05))
    close.when(passed(['k1'])).refuses('check-not-in', { verdict: 'too-close' })
    close.when(passed(['k1'], ' ')).refuses('check-not-in', { verdict: 'too-close' })
    close
      .when(passed(['k1'], 'a 0.05 leaf drags, a 0.06 does not go'))
      .makes('checks-done', { measure: 'q1' })
    told(asked('p1', 'measure', 'flatness'), flatness('p1', 0.2))
      .when(passed(['k1'], 'fine'))
      .refuses('check-not-in', { verdict: 'out' })
  })

  test('a set measured at once answers for each, and the worst is not passed', () => {
    const measured = told(
      asked('p2', 'measure', 'oil clearance'),
      asked('p3', 'measure', 'oil clearance'),
      clearances('p2', { I1: 0.03, I2: 0.2 }),
    )
    measured.when(passed(['k1'])).makes('checks-done', { measure: 'q1' })
    measured.when(passed(['k1', 'k2'])).refuses('check-not-in', { check: 'k2' })
  })

  test('are dropped with a reason, and waived by an override', () => {
    told(asked('p1')).when({ do: 'drop-check', check: 'k1', reason: ' ' }).refuses('text-missing')
    told(asked('p1')).when({ do: 'drop-check', check: 'k1', reason: 'new' }).makes('check-dropped')
    expect(told(asked('p1'), override('k1')).when(take(1)).makes('build-began').state.build).toBe(1)
  })
})

describe('a verdict', () => {
  test('is by name and with its ground', () => {
    told()
      .when(judged('replace', ' ', 'p1'))
      .refuses('text-missing', { what: 'reason' })
    told().when(judged('replace', 'cracked')).refuses('text-missing')
    told()
      .when(judged('replace', 'cracked', 'p7'))
      .refuses('not-for-home')
    told()
      .when({ do: 'judge', pieces: ['p1'], verdict: 'machine', reason: 'warped', picture: 'g1' })
      .refuses('unknown', { what: 'picture' })
  })

  test('names the last measurement as its ground, and answers the checks where it is good', () => {
    const out = told(asked('p1', 'measure', 'flatness'), asked('p1'), flatness('p1', 0.2))
    out.when(judged('machine', 'warped', 'p1')).makes('judged', { measure: 'q1', checks: [] })
    const good = out.when(judged('fit-again', 'the gasket is thick', 'p1')).makes('judged', {
      measure: 'q1',
      checks: ['k1', 'k2'],
    })
    expect(good.state.checks.get('k1')?.done).toMatchObject({ measure: 'q1', says: 'the gasket is thick' })
  })

  test('takes along what belongs together, where it is to be replaced, and only then', () => {
    const bored = told(together('bored as one', 'p1', 'p2', 'p3'))
    bored.when(judged('replace', 'cracked', 'p1')).makes('judged', { of: ['p1'], along: ['p2', 'p3'] })
    bored.when(judged('replace', 'all worn', 'p1', 'p2', 'p3')).makes('judged', { along: [] })
    bored.when(judged('machine', 'warped', 'p1')).makes('judged', { along: [] })
    bored
      .and(judged('replace', 'worn', 'p2'))
      .when(judged('fit-again', 'good', 'p1'))
      .makes('judged', { along: [] })
  })

  test('of some of a lot takes them out of it, and leaves the home short by so many', () => {
    const { state } = told()
      .when(judgedSome(3, 'replace', 'p5'))
      .makes('judged', { count: 3 })
    expect([balance(state.ledger, 'p5', 'c1'), balance(state.ledger, 'p5', 'scrap')]).toEqual([5, 3])
    expect(state.verdicts.has('p5')).toBe(false)
  })

  test('of all of a lot is a verdict on the lot', () => {
    const { state } = told()
      .when(judgedSome(8, 'replace', 'p5'))
      .makes('judged', { moves: [] })
    expect(state.verdicts.get('p5')?.verdict).toBe('replace')
  })

  test.each<[string, Command, string]>([
    ['some of a lot to be machined', judgedSome(2, 'machine', 'p5'), 'judge-part'],
    ['two of one', judgedSome(2, 'replace', 'p1'), 'judge-part'],
    ['two of a matched piece', judgedSome(2, 'replace', 'p2'), 'judge-part'],
    ['more than a count can be', judgedSome(0, 'replace', 'p5'), 'count-wrong'],
    ['more than there are', judgedSome(9, 'replace', 'p5'), 'not-within-reach'],
  ])('%s is refused', (_says, command, code) => {
    told()
      .when(command)
      .refuses(code as 'judge-part')
  })

  test('more than lie within reach is refused with where the rest is', () => {
    told(move('p5', at('out'), { count: 5 }))
      .when(judgedSome(4, 'replace', 'p5'))
      .refuses('not-within-reach', { wanted: 4, there: 3 })
  })

  test('on what is fitted holds the first start and not the step that is done', () => {
    const cover = given(
      begin('Engine off'),
      off(1, 'oil pump', { kind: 'part' }),
      end,
      take(1),
      fitted('p1'),
      done(1),
    )
    cover.when({ do: 'clear' }).makes('cleared')
    const after = cover.and(judged('replace', 'it leaks', 'p1'))
    after
      .when({ do: 'clear' })
      .refuses('not-clear', { leftovers: [{ code: 'piece-judged', piece: 'p1', undo: [1] }] })
    after.when(bought(1, 'p1')).refuses('already-fitted')
    after
      .and(reopen(1))
      .when(bought(1, 'p1'))
      .makes('supplied', { retired: ['p1'] })
  })

  test('withdraws the clearance', () => {
    const cover = given(
      begin('Engine off'),
      off(1, 'oil pump', { kind: 'part' }),
      end,
      take(1),
      fitted('p1'),
      done(1),
      { do: 'clear' },
    )
    expect(cover.and(asked('p1')).state.cleared).toBe(false)
    expect(cover.and(judged('machine', 'it leaks', 'p1')).state.cleared).toBe(false)
  })

  test('is taken back by undo, with the checks it had answered', () => {
    const { state } = told(asked('p1'), judged('fit-again', 'good', 'p1'), { do: 'undo' })
    expect(state.verdicts.has('p1')).toBe(false)
    expect(state.checks.get('k1')?.done).toBe(null)
  })
})

describe('what belongs together', () => {
  test('is two pieces at least', () => {
    told().when(together('alone', 'p1')).refuses('nothing-to-bind', { piece: 'p1' })
    told()
      .when(together('alone', 'p1', 'p1'))
      .refuses('nothing-to-bind')
    told().when(together('nothing')).refuses('text-missing')
    told()
      .when(together('an aid', 'p1', 'p7'))
      .refuses('not-for-home')
    told()
      .when(together(' ', 'p1', 'p2'))
      .makes('bound', { of: ['p1', 'p2'], reason: undefined })
  })
})

describe('a finding', () => {
  const list = listed(
    'metal in the oil',
    { do: 'replace', piece: 'p6' },
    { do: 'check', piece: 'p2', kind: 'look', what: ['score'] },
  )

  test('opens its lists in the same act', () => {
    const { state } = told(list)
      .when(found('metal in the oil', 'h1'))
      .makes('found-out', {
        condemned: ['p6'],
        checks: [{ id: 'k1', piece: 'p2', kind: 'look', what: ['score'] }],
      })
    expect(state.verdicts.get('p6')).toMatchObject({ verdict: 'replace', reason: 'metal in the oil' })
  })

  test('takes along what belongs together with what is to be replaced', () => {
    told(list, together('one housing', 'p6', 'p1'))
      .when(found('metal in the oil', 'h1'))
      .makes('found-out', { condemned: ['p6', 'p1'] })
  })

  test('asks for nothing of what was replaced since, nor twice for the same', () => {
    told(list, bought(1, 'p6', true))
      .when(found('metal', 'h1'))
      .makes('found-out', { condemned: [] })
    told(list, found('metal', 'h1')).when(found('metal again', 'h1')).makes('found-out', { checks: [] })
    told(list, found('metal', 'h1'), passed(['k1']))
      .when(found('metal again', 'h1'))
      .makes('found-out', { checks: [{ id: 'k2' }] })
  })

  test('is noted with the step in hand, on the way off as on the way back', () => {
    given(begin('Engine off'))
      .when(found('a coin'))
      .makes('found-out', { finding: { id: 'y1', step: 1 } })
    given(begin('Engine off'), off(1, 'oil pump', { kind: 'part' }), end, take(1))
      .when(found('a coin'))
      .makes('found-out', { finding: { step: 1 } })
  })

  test.each<[string, Command, string]>([
    ['no words', found(' '), 'text-missing'],
    ['a list that is not there', found('metal', 'h9'), 'unknown'],
    ['a list of nothing', { do: 'set-trigger', when: 'metal', items: [] }, 'text-missing'],
    ['a list for nothing', listed(' ', { do: 'replace', piece: 'p1' }), 'text-missing'],
    ['a list about an aid', listed('metal', { do: 'replace', piece: 'p7' }), 'not-for-home'],
    ['dropping a list that is not there', { do: 'drop-trigger', trigger: 'h9', reason: 'gone' }, 'unknown'],
  ])('%s is refused', (_says, command, code) => {
    told()
      .when(command)
      .refuses(code as 'unknown')
  })
})
