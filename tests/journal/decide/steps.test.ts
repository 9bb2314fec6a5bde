import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { addStep, begin, done, endStrip, look, off, override, putOn, strip } from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

const change = (step: number, more: object): Command => ({ do: 'change-step', step, ...more })
const afters = (job: ReturnType<typeof given>) => [...job.state.steps.values()].map(({ after }) => after)

describe('a strip step', () => {
  test('ends the one before and hangs under it', () => {
    const job = given(strip('cover off'), strip('chain out'), strip('cams out'))
    expect(afters(job)).toEqual([[], [1], [2]])
    expect([...job.state.steps.values()].map(({ stripping }) => stripping)).toEqual([false, false, true])
    expect(job.state.strip).toBe(3)
  })

  test.each<[string, Command[], number[]]>([
    ['said otherwise', [strip('a'), strip('b'), strip('c', { after: [1, 1] })], [1]],
    ['under nothing', [strip('a'), strip('b', { after: [] })], []],
    [
      'the last is back on: under the one before',
      [strip('a'), off(1, 'x'), strip('b'), off(1, 'y'), endStrip, putOn('p2'), done(2), strip('c')],
      [1],
    ],
    ['all is back on', [strip('a'), off(1, 'x'), endStrip, putOn('p1'), done(1), strip('c')], []],
    [
      'the last had nothing to put back, and all else is on',
      [strip('a'), off(1, 'x'), strip('look inside'), endStrip, putOn('p1'), done(1), strip('c')],
      [],
    ],
  ])('%s', (_, commands, after) => {
    expect(afters(given(...commands)).at(-1)).toEqual(after)
  })

  test.each([
    ['valve cover off', true],
    ['head off', true],
    ['cylinder head off', true],
    ['oil pan off', true],
    ['cams out', false],
    ['header pipe off', false],
  ])('%s: hides what lies beneath, by its name: %s', (title, hides) => {
    expect(given(strip(title)).state.steps.get(1)?.hides).toBe(hides)
  })

  test('hides or not, where the user says so', () => {
    expect(given(strip('valve cover off', { hides: false })).state.steps.get(1)?.hides).toBe(false)
    expect(given(strip('shield off'), change(1, { hides: true })).state.steps.get(1)?.hides).toBe(true)
  })

  test.each<[string, Command, string]>([
    ['no title', strip('  '), 'text-missing'],
    ['under a step nobody knows', strip('b', { after: [9] }), 'unknown'],
    ['under a step of the way back', strip('b', { after: [2] }), 'not-a-strip-step'],
    ['under a step that is back on', strip('b', { after: [1] }), 'step-done'],
  ])('refused: %s', (_, command, code) => {
    given(strip('a'), off(1, 'x'), endStrip, addStep('check'), putOn('p1'), done(1))
      .when(command)
      .refuses(code as 'law')
  })

  test('ends, once', () => {
    given(strip('a')).when(endStrip).makes('strip-ended', { step: 1 })
    given(strip('a'), endStrip).when(endStrip).refuses('no-strip-step')
    given(strip('a'), endStrip, off(1, 'bolt')).when(endStrip).makes('strip-ended', { step: 2 })
  })
})

describe('a step of the way back', () => {
  const job = given(strip('cover off'), off(1, 'cover'), strip('cams out'), off(1, 'cams'), endStrip)

  test('comes between what it needs and what needs it', () => {
    const added = job.and(addStep('turn by hand', { needs: [2], before: [1] }))
    expect(added.state.steps.get(3)).toMatchObject({ needs: [2], way: 'build', kind: 'check' })
    expect(added.state.steps.get(1)?.needs).toEqual([3])
    added.and(putOn('p2'), done(2)).when(putOn('p1')).refuses('step-blocked')
    added.and(putOn('p2'), done(2), done(3), look(1)).when(putOn('p1')).makes('fitted')
  })

  test.each<[string, Command, string]>([
    ['no title', addStep(' '), 'text-missing'],
    ['needs what nobody knows', addStep('x', { needs: [9] }), 'unknown'],
    ['before what nobody knows', addStep('x', { before: [9] }), 'unknown'],
    [
      'needs the outer one and comes before the inner one',
      addStep('x', { needs: [1], before: [2] }),
      'cycle',
    ],
    ['needs and comes before the same', addStep('x', { needs: [1], before: [1] }), 'cycle'],
  ])('refused: %s', (_, command, code) => {
    job.when(command).refuses(code as 'law')
  })

  test('a circle is named', () => {
    const refusal = job.when(addStep('x', { needs: [1], before: [2] })).refuses('cycle')
    expect(refusal.code === 'cycle' && [...refusal.steps].sort()).toEqual([1, 2, 3])
  })

  test('not beneath one that is done', () => {
    job
      .and(putOn('p2'), done(2))
      .when(addStep('oil them', { before: [2] }))
      .refuses('step-done')
  })
})

describe('a step is changed', () => {
  const job = given(
    strip('cover off'),
    off(1, 'cover'),
    strip('cams out'),
    off(1, 'cams'),
    strip('bracket off'),
    endStrip,
  )

  test('its title, its order, what it needs', () => {
    const changed = job.and(change(3, { title: 'side bracket off', after: [] }), change(1, { needs: [3] }))
    expect(changed.state.steps.get(3)).toMatchObject({ title: 'side bracket off', after: [] })
    expect(changed.state.steps.get(1)?.needs).toEqual([3])
  })

  test.each<[string, Command, string]>([
    ['no title', change(1, { title: ' ' }), 'text-missing'],
    ['a step nobody knows', change(9, { title: 'x' }), 'unknown'],
    ['under a step nobody knows', change(3, { after: [9] }), 'unknown'],
    ['needing what nobody knows', change(3, { needs: [9] }), 'unknown'],
    ['a circle', change(1, { after: [2] }), 'cycle'],
    ['under itself', change(1, { after: [1] }), 'cycle'],
  ])('refused: %s', (_, command, code) => {
    job.when(command).refuses(code as 'law')
  })

  test('no order for one that is done, nor a new one under one that is done', () => {
    const built = job.and(putOn('p2'), done(2))
    built.when(change(2, { after: [] })).refuses('step-done')
    built.when(change(2, { needs: [] })).refuses('step-done')
    built.when(change(2, { title: 'cams' })).makes('step-changed')
    given(strip('a'), off(1, 'x'), strip('b', { after: [] }), endStrip, putOn('p1'), done(1))
      .when(change(2, { after: [1] }))
      .refuses('step-done', { step: 1 })
  })

  test('the order of the strip-down is of strip steps', () => {
    job
      .and(addStep('check'))
      .when(change(4, { after: [1] }))
      .refuses('not-a-strip-step')
    job
      .and(addStep('check'))
      .when(change(3, { after: [4] }))
      .refuses('not-a-strip-step')
  })

  test('a look taken before holds no more', () => {
    const looked = job.and(putOn('p2'), done(2), look(1))
    expect(looked.state.steps.get(1)?.looked).toBe(true)
    expect(looked.and(change(1, { needs: [] })).state.steps.get(1)?.looked).toBe(false)
    expect(looked.and(change(3, { after: [] })).state.steps.get(1)?.looked).toBe(false)
    expect(job.and(change(1, { title: 'big cover off' })).state.steps.get(1)?.looked).toBe(false)
  })
})

describe('notes', () => {
  const note = (more: object): Command => ({ do: 'note', kind: 'note', text: 'tight', ...more }) as Command

  test('stand with the step under way, or the one named', () => {
    const job = given(
      strip('a'),
      off(1, 'x'),
      note({}),
      endStrip,
      note({}),
      begin(1),
      note({}),
      note({ step: 1 }),
    )
    expect(job.state.notes.map(({ step }) => step)).toEqual([1, null, 1, 1])
  })

  test.each<[string, object, string]>([
    ['empty', { text: ' ' }, 'text-missing'],
    ['with a step nobody knows', { step: 9 }, 'unknown'],
    ['of no minutes', { kind: 'minutes', minutes: 0 }, 'count-wrong'],
    ['of minutes without end', { kind: 'minutes', minutes: Number.POSITIVE_INFINITY }, 'count-wrong'],
    ['of minus ten minutes', { kind: 'minutes', minutes: -10 }, 'count-wrong'],
  ])('refused: %s', (_, more, code) => {
    given()
      .when(note(more))
      .refuses(code as 'law')
  })
})

test('numbers of steps end at 9999', () => {
  const job = given(strip('a'))
  job.state.dealt.step = 9999
  job.when(strip('b')).refuses('numbers-used-up')
  job.when(override('start 1')).makes('overridden')
})

test('nothing before the first start waits for what comes after it', () => {
  given(addStep('look for leaks', { way: 'after-start' }))
    .when(addStep('turn by hand', { needs: [1] }))
    .refuses('cycle', { steps: [2, 1] })
})
