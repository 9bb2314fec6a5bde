import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { isLastRound, lainIn, toTip } from '../../src/session/last-round.ts'
import { lainInShort, lainTexts } from '../../src/words/lain-in.ts'
import { addStep, count, endStrip, off, putOn, strip, supply } from '../support/commands.ts'
import { given } from '../support/journal.ts'

const bag: Command = { do: 'open-container', kind: 'bag' }
/** Bolts in bag 1 and a lever on tag 2, all home again; bag 3 never held anything. The round is step 2. */
const home: Command[] = [
  strip('lever off'),
  off(4, 'lever bolts'),
  off(1, 'lever', { into: { kind: 'new', container: 'tag' } }),
  bag,
  endStrip,
  addStep('Tip out the bags', { due: 'last' }),
  addStep('look at it', {}),
  putOn('p2'),
  putOn('p1'),
]
const stops = (...commands: Command[]) =>
  toTip(given(...home, ...commands).state).map(({ container, holds, agreed }) => [container, holds, agreed])

describe('what is tipped out on the last round', () => {
  test.each<[string, Command[], [number, boolean, boolean][]]>([
    ['what something was taken out of, but no tag: nothing lies in one', [], [[1, false, false]]],
    ['counted and empty', [count(1, [null, 0])], [[1, false, true]]],
    ['counted, and one is in it', [count(1, [null, 1])], [[1, false, false]]],
    ['a spare lies in it', [supply('p1', 1, { kind: 'container', no: 1 })], [[1, true, false]]],
    ['void: its label stands for nothing', [{ do: 'void-container', container: 1, reason: 'torn' }], []],
  ])('%s', (_, commands, found) => {
    expect(stops(...commands)).toEqual(found)
  })

  test('it is the step that is due last', () => {
    const { state } = given(...home)
    expect([1, 2, 3, 4].map((no) => isLastRound(state, no))).toEqual([false, true, false, false])
  })
})

test('what lay in a bag is told with where it is, and what is gone for good only where nothing else lay there', () => {
  const { state } = given(...home)
  expect(lainInShort(state, lainIn(state, 1))).toBe('4 × lever bolts')
  expect(lainTexts(state, lainIn(state, 1), () => '14:03')).toEqual([
    '4 × lever bolts, out since 14:03: home in step 1, lever',
  ])
  const scrapped = given(
    strip('lever off'),
    off(2, 'washers'),
    off(2, 'lever bolts', { into: { kind: 'container', no: 1 } }),
    endStrip,
    { do: 'move', piece: 'p1', into: { kind: 'place', place: 'scrap' } },
  )
  expect(lainInShort(scrapped.state, lainIn(scrapped.state, 1))).toBe('2 × washers')
  const { state: both } = scrapped.and(
    { do: 'leave-off', piece: 'p1', count: 2, reason: 'the bracket is gone' },
    putOn('p2'),
  )
  expect(lainInShort(both, lainIn(both, 1))).toBe('2 × lever bolts')
  expect(lainTexts(both, lainIn(both, 1), () => '14:03')).toEqual([
    '2 × washers, out since 14:03: in scrap',
    '2 × lever bolts, out since 14:03: home in step 1, lever',
  ])
})
