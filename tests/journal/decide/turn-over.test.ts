import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { Gates } from '../../../src/plan/gates.ts'
import {
  addStep,
  begin,
  done,
  endStrip,
  fail,
  off,
  override,
  redo,
  reopen,
  stop,
  strip,
  turnedOver,
  undo,
} from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

const byHand = addStep('turn over by hand', { kind: 'turn', turns: 2 })
const job = given(byHand)
const turned = (of: typeof job, no = 1) => of.state.steps.get(no)?.turned

describe('full turns by hand', () => {
  test('are counted, the step taken up with the first, and closed after the last', () => {
    job.when(turnedOver()).makes('turned-over', { step: 1, began: true })
    const once = job.and(turnedOver())
    once.when(done()).refuses('step-blocked', { reasons: [{ code: 'turns-open', turns: 2, turned: 1 }] })
    once.when(turnedOver()).makes('turned-over', { began: false })
    once.and(turnedOver()).when(done()).makes('build-done')
    // More than asked for does no harm.
    expect(turned(once.and(turnedOver(), turnedOver()))).toBe(3)
  })

  test('are asked for before the step is closed without being taken up', () => {
    job.when(done(1)).refuses('step-blocked', { gate: 'finish' })
  })

  test('are passed over knowingly', () => {
    job.and(override('finish 1')).when(done(1)).makes('build-done')
  })

  test('of a step of another kind are counted where they are asked for', () => {
    const marks = given(addStep('see the timing marks', { kind: 'check', turns: 2 }))
    marks.and(turnedOver(1), turnedOver(1)).when(done(1)).makes('build-done')
  })

  test.each<[string, Command[], number]>([
    ['a stop', [turnedOver(), stop()], 0],
    ['a break without a word', [turnedOver(), turnedOver(), stop(true)], 0],
    ['a stop that was taken back', [turnedOver(), stop(), undo], 1],
    ['a turn that was taken back', [turnedOver(), turnedOver(), undo], 1],
    ['and made again', [turnedOver(), turnedOver(), undo, redo], 2],
    ['the step opened again', [turnedOver(), turnedOver(), done(), reopen(1)], 0],
    ['and taken up again', [turnedOver(), turnedOver(), done(), reopen(1), begin(1)], 0],
    ['a check that failed', [turnedOver(), turnedOver(), fail(1)], 0],
    ['a stop after the step is done', [turnedOver(), turnedOver(), done(), stop()], 2],
  ])('after %s there are so many', (_, commands, count) => {
    expect(turned(job.and(...commands))).toBe(count)
  })

  test('that bound are made again, not waved through by those before', () => {
    const failed = job.and(turnedOver(), turnedOver(), fail(1))
    expect(new Gates(failed.state).finish(1)).toEqual([{ code: 'turns-open', step: 1, turns: 2, turned: 0 }])
    failed.when(done(1)).refuses('step-blocked')
  })

  test.each<[string, Command[], Command, string]>([
    [
      'in a step that asks for none',
      [strip('seat off'), off(2, 'bolts'), endStrip],
      turnedOver(2),
      'not-turned-over',
    ],
    ['in a step that is done', [turnedOver(), turnedOver(), done()], turnedOver(1), 'step-done'],
    ['in a step nobody knows', [], turnedOver(9), 'unknown'],
    ['with two such steps ready and none named', [byHand], turnedOver(), 'no-build-step'],
    [
      'before what is beneath is done',
      [strip('seat off'), off(2, 'bolts'), endStrip, addStep('turn', { kind: 'turn', needs: [2] })],
      turnedOver(3),
      'step-blocked',
    ],
    ['none of them asked for', [], addStep('turn', { turns: 0 }), 'count-wrong'],
    ['21 of them asked for', [], addStep('turn', { turns: 21 }), 'count-wrong'],
    ['one and a half asked for', [], addStep('turn', { turns: 1.5 }), 'count-wrong'],
  ])('refused: %s', (_, commands, command, code) => {
    job
      .and(...commands)
      .when(command)
      .refuses(code as 'law')
  })
})
