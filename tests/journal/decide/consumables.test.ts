import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { decide } from '../../../src/journal/decide/decide.ts'
import { Gates } from '../../../src/plan/gates.ts'
import {
  addStep,
  begin,
  done,
  drain,
  endStrip,
  fill,
  off,
  override,
  putOn,
  reopen,
  strip,
} from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

type Asked = Extract<Command, { do: 'set-consumable' }>

// Each command of a story takes a second, on 1 January 2030 from 8 h on. The times are invented.
const sealant = (more: Partial<Asked> = {}): Command => ({
  do: 'set-consumable',
  step: 1,
  kind: 'sealant',
  name: 'grey sealant',
  ...more,
})
const applied: Command = { do: 'apply', consumable: 's1' }
const bracket = [strip('bracket off'), drain('oil'), off(2, 'bracket bolts'), endStrip]
const later = (minutes: number) => new Date(Date.UTC(2030, 0, 1, 8, minutes)).toISOString()

/** What a command comes to when it is asked so many minutes after the story began. */
function comesTo(minutes: number, commands: Command[], command: Command): string {
  const { state } = given(...commands)
  const decision = decide(state, command, { at: later(minutes), today: '2030-01-01' })
  return decision.ok ? decision.body.type : decision.refusal.code
}

describe('what is asked to be put on', () => {
  test('what cures without more words holds up the first start', () => {
    const { state } = given(...bracket, sealant({ cureMinutes: 60 }), sealant({ name: 'oil on the lip' }))
    expect([...state.consumables.values()].map(({ id, before }) => [id, before])).toEqual([
      ['s1', ['start']],
      ['s2', []],
    ])
  })

  test.each<[string, Partial<Asked>, string, Record<string, unknown>]>([
    ['a step that is not there', { step: 9 }, 'unknown', { what: 'step' }],
    ['no words', { name: ' ' }, 'text-missing', { what: 'name' }],
    ['a time that is none', { workMinutes: 0 }, 'count-wrong', { count: 0 }],
    ['a time below zero', { cureMinutes: -5 }, 'count-wrong', { count: -5 }],
    ['its own step waits for it', { cureMinutes: 60, before: [1] }, 'cycle', { steps: [1] }],
    ['a step that is not there waits for it', { before: [9] }, 'unknown', { what: 'step' }],
    ['a fluid that is not there waits for it', { before: ['f9'] }, 'unknown', { what: 'fluid' }],
    ['out of date', { expires: '2029-12-30' }, 'out-of-date', { days: 2, consumable: null }],
  ])('%s: refused', (_, more, code, facts) => {
    given(...bracket)
      .when(sealant(more))
      .refuses(code as 'cycle', facts)
  })

  test('the last day of use is a day of use', () => {
    given(...bracket)
      .when(sealant({ expires: '2030-01-01' }))
      .makes('consumable-set')
  })

  const two = [
    strip('guard off'),
    off(1, 'screw'),
    strip('bracket off'),
    drain('oil'),
    off(2, 'bolts'),
    endStrip,
  ]

  test('what lies beneath cannot wait for it, nor a filling there', () => {
    const told = given(...two)
    told.when(sealant({ step: 1, before: [2] })).refuses('cycle', { steps: [1, 2] })
    told.when(sealant({ step: 1, before: ['f1'] })).refuses('cycle', { steps: [1, 2] })
    told.when(sealant({ step: 2, before: [1, 'f1', 'start'] })).makes('consumable-set')
  })

  test('nothing is asked in a step that is done', () => {
    given(...bracket, putOn('p1'), fill('f1'), done(1))
      .when(sealant())
      .refuses('step-done')
  })

  test('it is dropped while it is not on, and then holds up nothing', () => {
    const drop: Command = { do: 'drop-consumable', consumable: 's1', reason: 'a gasket is used' }
    const told = given(...bracket, sealant())
    expect(told.when(drop).makes('consumable-dropped').state.consumables.size).toBe(0)
    told.and(applied).when(drop).refuses('put-on-already')
  })
})

describe('it is put on', () => {
  test('takes up the step, when this could start', () => {
    const { state } = given(...bracket, sealant(), applied)
    expect(state.steps.get(1)?.built).toBe('underway')
    expect(state.build).toBe(1)
    given(strip('guard off'), off(1, 'screw'), strip('bracket off'), off(2, 'bolts'), endStrip, sealant())
      .when(applied)
      .refuses('step-blocked', { reasons: [{ code: 'step-before', step: 2, built: 'open' }] })
  })

  test('not twice, but anew after the step was reopened', () => {
    const told = given(...bracket, sealant(), applied)
    told.when(applied).refuses('put-on-already', { isLate: false })
    told.and(reopen(1)).when(applied).makes('applied', { began: true })
  })

  const quick = [...bracket, sealant({ workMinutes: 5 }), applied]

  test.each([
    ['within its working time', 4, quick, 'put-on-already'],
    ['dried before anything was fitted on it', 6, quick, 'applied'],
    ['dried with a bolt in it', 6, [...quick, putOn('p1', undefined, 1)], 'put-on-already'],
    ['dried, and all is fitted', 6, [...quick, putOn('p1')], 'put-on-already'],
    ['a clock that was set back', -60, quick, 'put-on-already'],
  ] as const)('again, %s', (_, minutes, commands, expected) => {
    expect(comesTo(minutes, [...commands], applied)).toBe(expected)
  })

  test('not one that is out of date by now', () => {
    const { state } = given(...bracket, sealant({ expires: '2030-01-10' }))
    const at = '2030-01-12T08:00:00.000Z'
    const decision = decide(state, applied, { at, today: '2030-01-12' })
    expect(decision).toMatchObject({ ok: false, refusal: { code: 'out-of-date', consumable: 's1', days: 2 } })
  })
})

describe('a filling waits', () => {
  const cures = (step: number) => sealant({ step, cureMinutes: 60, before: ['f1'] })

  test('in the same step: until it is on, and has set since the last piece was fitted', () => {
    const asked = [...bracket, cures(1), begin(1)]
    expect(comesTo(1, asked, fill('f1'))).toBe('not-to-be-filled')
    const together = [...asked, applied, putOn('p1')]
    expect(comesTo(60, together, fill('f1'))).toBe('not-to-be-filled')
    expect(comesTo(61, together, fill('f1'))).toBe('filled')
    expect(comesTo(1, [...together, override('s1', 'a day has passed')], fill('f1'))).toBe('filled')
  })

  test('in another step: until that of the joint is done too', () => {
    const beside = [...bracket, strip('lever off', { after: [] }), off(2, 'bolts'), endStrip]
    const together = [...beside, cures(2), applied, putOn('p2'), begin(1)]
    expect(comesTo(61, together, fill('f1'))).toBe('not-to-be-filled')
    expect(comesTo(61, [...together, done(2)], fill('f1'))).toBe('filled')
  })
})

describe('a step waits', () => {
  test('for a joint beside it until it is together, and until it has set', () => {
    const beside = [
      ...bracket,
      strip('lever off', { after: [] }),
      off(2, 'bolts'),
      endStrip,
      sealant({ step: 2, cureMinutes: 60, before: [1] }),
    ]
    const reasons = (...commands: Command[]) =>
      new Gates(given(...beside, ...commands).state).start(1).map(({ code }) => code)
    expect(reasons()).toEqual(['consumable-due'])
    expect(reasons(applied, putOn('p2'))).toEqual(['step-before', 'curing'])
    expect(reasons(applied, putOn('p2'), done(2))).toEqual(['curing'])
    expect(reasons(override('s1', 'no need'))).toEqual([])
  })

  test('but not for what came to lie on top of it since: each would wait for the other', () => {
    const told = given(
      ...bracket,
      addStep('fit the plate', { needs: [] }),
      sealant({ step: 2, cureMinutes: 60, before: [1] }),
      { do: 'change-step', step: 2, needs: [1] },
    )
    expect(new Gates(told.state).start(1)).toEqual([])
  })
})
