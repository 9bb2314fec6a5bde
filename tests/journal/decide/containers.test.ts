import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { at, bag, endStrip, hand, move, newBag, off, redo, undo } from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

const open = (more: object = {}): Command => ({ do: 'open-container', kind: 'bag', ...more })
const put = (container: number, inside: number | null): Command => ({
  do: 'put-container',
  container,
  inside,
})
const voided = (container: number, insteadOf?: number): Command => ({
  do: 'void-container',
  container,
  insteadOf,
  reason: 'the label is torn',
})

describe('a container', () => {
  test('is opened with its own number, and is in hand then', () => {
    const job = given(open(), open({ kind: 'tray', slots: 8, name: 'caps' }))
    expect([...job.state.containers.keys()]).toEqual([1, 2])
    expect(job.state.containers.get(2)).toMatchObject({ kind: 'tray', slots: 8, name: 'caps', inside: null })
    expect(job.state.hand).toBe(2)
  })

  test.each([[0], [-1], [1.5], [201], [Number.NaN]])('has no %d slots', (slots) => {
    given()
      .when(open({ kind: 'tray', slots }))
      .refuses('count-wrong')
    given()
      .when(off(1, 'bolt', { into: { kind: 'new', container: 'tray', slots } }))
      .refuses('count-wrong')
  })

  test('stands in another, and never in itself, near or far', () => {
    const shelf = given(open({ kind: 'shelf' }), open({ kind: 'bin', inside: 1 }), open({ inside: 2 }))
    expect(shelf.state.containers.get(3)?.inside).toBe(2)
    shelf.when(put(1, 1)).refuses('inside-itself')
    shelf.when(put(1, 3)).refuses('inside-itself', { container: 1, into: 3 })
    shelf.when(put(3, 1)).makes('container-put')
    shelf.when(put(3, null)).makes('container-put')
    shelf.when(put(3, 9)).refuses('unknown')
    shelf.when(put(9, 1)).refuses('unknown')
    shelf.when(open({ inside: 9 })).refuses('unknown')
  })
})

describe('a label that is void', () => {
  const job = given(open({ kind: 'shelf' }), open({ kind: 'bin', inside: 1 }), open({ inside: 2 }), open())

  test('answers for nothing, and says what took its place', () => {
    const gone = job.and(voided(4, 3))
    expect(gone.state.containers.get(4)?.voided).toEqual({ reason: 'the label is torn', insteadOf: 3 })
    gone.when(off(1, 'bolt', { into: bag(4) })).refuses('container-void', { insteadOf: 3 })
    gone.when({ do: 'count', container: 4, counts: [{ piece: null, counted: 0 }] }).refuses('container-void')
    gone.when(voided(4)).refuses('container-void')
    gone.when(put(3, 4)).refuses('container-void')
    job
      .and(voided(4))
      .when(off(1, 'bolt', { into: bag(4) }))
      .refuses('container-void', { insteadOf: null })
  })

  test('in hand is in hand no more', () => {
    expect(job.state.hand).toBe(4)
    expect(job.and(voided(4)).state.hand).toBeNull()
  })

  test('leaves the bags that stood in it where it stood', () => {
    const gone = job.and(voided(2))
    expect(gone.state.containers.get(3)?.inside).toBe(1)
    gone.when(put(4, 3)).makes('container-put')
  })

  test('is not made void with pieces in it, in favour of itself, for no reason, or if nobody knows it', () => {
    const full = job.and(off(2, 'bolts', { into: bag(4) }))
    full.when(voided(4)).refuses('not-empty', { count: 2 })
    full
      .and(endStrip, move('p1', at('bench')))
      .when(voided(4))
      .makes('container-voided')
    job.when(voided(4, 4)).refuses('inside-itself')
    job.when({ ...voided(4), reason: ' ' } as Command).refuses('text-missing')
    job.when(voided(4, 9)).refuses('unknown')
    job.when(voided(9)).refuses('unknown')
  })
})

describe('a number is dealt once', () => {
  test.each<[string, Command[], number[]]>([
    ['by opening', [open(), open()], [1, 2]],
    ['with what came off', [off(1, 'bolt', { into: newBag }), off(1, 'nut', { into: newBag })], [1, 2]],
    ['with a move', [off(1, 'bolt'), move('p1', newBag)], [1, 2]],
    ['taken back: its label may be on a bag already', [open(), undo, open()], [2]],
    ['taken back twice, and one brought again', [open(), open(), undo, undo, redo, open()], [1, 3]],
    [
      'with what came off and was taken back',
      [off(1, 'bolt', { into: hand }), undo, off(1, 'bolt', { into: hand })],
      [2],
    ],
    ['made void', [open(), { do: 'void-container', container: 1, reason: 'torn' }, open()], [1, 2]],
  ])('%s', (_, commands, numbers) => {
    expect([...given(...commands).state.containers.keys()]).toEqual(numbers)
  })

  test('and they end at 8999: what is above stands for the machine and its steps', () => {
    const job = given(open())
    job.state.dealt.container = 8998
    job.when(open()).makes('container-opened', { container: expect.objectContaining({ no: 8999 }) })
    job.state.dealt.container = 8999
    job.when(open()).refuses('numbers-used-up')
  })
})
