import { describe, expect, test } from 'vitest'
import type { Command, ContainerKind, Into } from '../../../src/journal/command.ts'
import {
  at,
  clear,
  count,
  endStrip,
  hand,
  matchedOff,
  move,
  off,
  redo,
  replace,
  slot,
  stop,
  undo,
} from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

const deal = (count: number): Command => ({ do: 'deal-labels', count })
const open = (kind: ContainerKind, no?: number, slots?: number): Command => ({
  do: 'open-container',
  kind,
  no,
  slots,
})
const voided = (container: number, insteadOf?: number): Command => ({
  do: 'void-container',
  container,
  insteadOf,
  reason: 'torn',
})
const voidRun = (from: number, to: number): Command => ({
  do: 'void-labels',
  from,
  to,
  reason: 'sheet lost',
})
const label = (no: number, as?: ContainerKind): Into => ({ kind: 'container', no, as })

describe('labels dealt to paper', () => {
  test('take the next numbers, run after run, and bags go on behind them', () => {
    const job = given(open('bag'), deal(3), deal(2), open('bag'))
    expect([...job.state.blanks.keys()]).toEqual([2, 3, 4, 5, 6])
    expect([...job.state.blanks.values()].map(({ run }) => run)).toEqual([3, 3, 3, 4, 4])
    expect([...job.state.containers.keys()]).toEqual([1, 7])
  })

  test.each([[0], [-1], [1.5], [1001], [Number.NaN]])('are never %d', (number) => {
    given().when(deal(number)).refuses('too-many-labels', { most: 1000 })
  })

  test('are 1000 at most in a run, and end at 8999', () => {
    const eight = given(...Array.from({ length: 8 }, () => deal(1000)))
    eight.and(deal(999)).when(open('bag')).refuses('numbers-used-up', { what: 'container', left: 0 })
    eight.when(deal(1000)).refuses('numbers-used-up', { what: 'container', left: 999 })
    eight.and(deal(999)).when(deal(1)).refuses('numbers-used-up', { left: 0 })
    eight.and(deal(999)).when(open('bag', 8999)).makes('container-opened')
  })

  test('are not taken back: undo passes over them to the entry before, and redo is still open', () => {
    const job = given(off(4, 'bolts'), deal(3))
    job.when(undo).makes('undone', { entry: 2 })
    const undone = job.and(undo)
    expect([...undone.state.blanks.keys()]).toEqual([2, 3, 4])
    undone.and(deal(1)).when(redo).makes('redone', { entry: 2 })
    expect([...undone.and(deal(1), redo).state.containers.keys()]).toEqual([1])
    given(deal(3)).when(undo).refuses('nothing-to-undo')
  })

  test('leave the clearance and the card as they are', () => {
    const cleared = given(
      off(1, 'bolt'),
      endStrip,
      { do: 'fit', fittings: [{ piece: 'p1' }] },
      {
        do: 'close-step',
      },
      clear,
    )
    const paper = cleared.and(deal(5), voidRun(2, 3))
    expect(paper.state.cleared).toBe(true)
    expect(given(stop(), deal(5), voidRun(1, 2)).state.card?.note).toBe('bolts half down')
  })
})

describe('an unused label', () => {
  const job = given(off(4, 'bolts'), deal(10))

  test.each<[string, Into, ContainerKind]>([
    ['a bag', label(5), 'bag'],
    ['a tag', label(5, 'tag'), 'tag'],
    ['a bin', label(5, 'bin'), 'bin'],
    ['a tray', { kind: 'new', container: 'tray', slots: 6, no: 5 }, 'tray'],
  ])('becomes %s with what goes into it, in the same entry', (_, into, kind) => {
    const { state } = job.when(off(2, 'nuts', { into })).makes('came-off', {
      opened: expect.objectContaining({ no: 5, kind }),
    })
    expect(state.containers.get(5)).toMatchObject({ kind, run: 3, voided: null })
    expect(state.blanks.has(5)).toBe(false)
    expect([...(state.ledger.accounts.get('p2')?.at.keys() ?? [])]).toEqual([kind === 'tray' ? 'c5/1' : 'c5'])
    expect(state.dealt.container).toBe(11)
  })

  test('is opened by a move, by what is supplied and by what explains a count', () => {
    job.when(move('p1', label(5))).makes('moved', { opened: expect.objectContaining({ no: 5 }) })
    job.when(replace('p1', 4, label(5, 'bin'))).makes('supplied', {
      opened: expect.objectContaining({ no: 5, kind: 'bin' }),
    })
    job
      .and(count(1, ['p1', 3]))
      .when({
        do: 'explain',
        difference: 'd1',
        how: { kind: 'moved', piece: 'p1', other: label(5) },
        reason: 'two bags were open',
      })
      .makes('explained', { opened: expect.objectContaining({ no: 5 }) })
  })

  test('is used once: what comes after goes into the container', () => {
    const used = job.and(off(2, 'nuts', { into: label(5, 'bin') }))
    used.when(off(2, 'washers', { into: label(5, 'tag') })).makes('came-off', { opened: undefined })
    used.when(open('bag', 5)).refuses('label-in-use', { container: 5 })
    used
      .when(off(1, 'clip', { into: { kind: 'new', container: 'bag', no: 5 } }))
      .refuses('label-in-use', { container: 5 })
  })

  test('is in hand once it is filled, and the label of a tray may name its slots', () => {
    expect(job.and(off(2, 'nuts', { into: label(5) })).state.hand).toBe(5)
    const tray = job.and(open('tray', 5, 4))
    tray
      .and(off(2, 'nuts', { into: slot(5, 2) }))
      .when(matchedOff(['1', '2'], 'cap', { into: hand }))
      .makes('came-off', {
        moves: [expect.objectContaining({ to: 'c5/1' }), expect.objectContaining({ to: 'c5/3' })],
      })
  })

  test('has no slots before it is a tray', () => {
    job.when(off(1, 'dowel', { into: slot(5, 2) })).refuses('slots-not-said', { container: 5 })
    job.when(off(1, 'dowel', { into: label(5, 'tray') })).refuses('slots-not-said', { container: 5 })
  })

  test('is no container yet for what asks for one', () => {
    const unused = { container: 5 }
    job.when({ do: 'put-container', container: 5, inside: 1 }).refuses('label-unused', unused)
    job.when({ do: 'put-container', container: 1, inside: 5 }).refuses('label-unused', unused)
    job.when({ do: 'open-container', kind: 'bag', inside: 5 }).refuses('label-unused', unused)
    job.when(count(5, ['p1', 4])).refuses('label-unused', unused)
  })

  test('is again unused when what used it is taken back', () => {
    const back = job.and(off(2, 'nuts', { into: label(5) }), undo)
    expect(back.state.blanks.get(5)).toEqual({ run: 3, voided: null })
    expect(back.state.containers.has(5)).toBe(false)
    expect(back.and(redo).state.containers.get(5)?.kind).toBe('bag')
  })

  test('must have been dealt to paper', () => {
    job.when(open('bag', 1)).refuses('label-in-use')
    job.when(open('bag', 12)).refuses('no-such-label', { container: 12 })
    job.when(off(1, 'clip', { into: label(12) })).refuses('unknown', { what: 'container', id: '12' })
    // A bag that was opened and taken back had its number by hand, not on a sheet.
    job.and(open('bag'), undo).when(open('bag', 12)).refuses('no-such-label')
  })
})

describe('an unused label that is void', () => {
  const job = given(deal(10), off(4, 'bolts', { into: label(3) }))

  test('is never used, and says why', () => {
    const torn = job.and(voided(5, 6))
    expect(torn.state.blanks.get(5)?.voided).toEqual({ reason: 'torn', insteadOf: 6 })
    torn.when(off(1, 'nut', { into: label(5) })).refuses('container-void', { container: 5, insteadOf: 6 })
    torn.when(open('bag', 5)).refuses('container-void')
    torn.when(voided(5)).refuses('container-void')
    torn.and(undo).when(open('bag', 5)).makes('container-opened')
  })

  test('is void by the run; those in use stay', () => {
    job.when(voidRun(1, 5)).makes('labels-voided', { labels: [1, 2, 4, 5], inUse: 1 })
    const lost = job.and(voidRun(1, 5))
    lost.when(voidRun(4, 7)).makes('labels-voided', { labels: [6, 7], inUse: 0 })
    lost.when(voidRun(1, 5)).refuses('no-unused-labels', { from: 1, to: 5 })
    lost.when(off(1, 'nut', { into: label(3) })).makes('came-off')
    job.when(voidRun(3, 3)).refuses('no-unused-labels')
    job.when(voidRun(20, 30)).refuses('no-unused-labels')
    job.when({ ...voidRun(1, 5), reason: ' ' } as Command).refuses('text-missing', { what: 'reason' })
  })

  test('is made void for no reason, or in favour of itself, as little as any', () => {
    job.when({ ...voided(5), reason: '' } as Command).refuses('text-missing')
    job.when(voided(5, 5)).refuses('inside-itself')
    job.when(voided(5, 99)).refuses('unknown')
    job.when(voided(3)).refuses('not-empty')
  })
})

test('a closed job prints no more labels', () => {
  const closed = given(
    off(1, 'bolt', { into: at('bench') }),
    endStrip,
    { do: 'fit', fittings: [{ piece: 'p1' }] },
    { do: 'close-step' },
    clear,
    { do: 'first-start' },
    { do: 'close-job' },
  )
  closed.when(deal(1)).refuses('job-closed')
})
