import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import type { Dealt } from '../../src/journal/dealt.ts'
import {
  addStep,
  aidIn,
  at,
  count,
  drain,
  endStrip,
  mark,
  matchedOff,
  move,
  newBag,
  off,
  putOn,
  replace,
  snug,
  strip,
  tightening,
  undo,
} from '../support/commands.ts'
import { given } from '../support/journal.ts'

const bag = given(off(3, 'bolts'), endStrip)

describe('numbers dealt, whether the entry stands or is taken back', () => {
  test.each<[string, Command[], Partial<Dealt>]>([
    [
      'what came off: a step, a bag and its pieces',
      [matchedOff(['I1', 'I2'], 'cap')],
      { piece: 3, step: 2, container: 2 },
    ],
    ['a strip step', [strip('cover off')], { step: 2 }],
    ['a step of the way back', [addStep('check')], { step: 2 }],
    ['a bag', [{ do: 'open-container', kind: 'bag' }], { container: 2 }],
    ['a bag that a move opened', [move('p1', newBag)], { container: 2 }],
    ['a bag that a supply opened', [replace('p1', 3, newBag)], { container: 2, piece: 2 }],
    ['an aid, and the step it opened', [aidIn('rag')], { piece: 2, step: 2 }],
    ['a fluid, and the step it opened', [drain('oil')], { fluid: 1, step: 2 }],
    ['a mark, and the step it opened', [mark('dot')], { mark: 1, step: 2 }],
    ['a tightening', [tightening('p1', [snug])], { tightening: 1 }],
    ['a fault', [off(1, 'stud', { broken: { kind: 'snapped', count: 1 } })], { fault: 1 }],
    ['two differences', [count(1, ['p1', 2], [null, 1])], { difference: 2 }],
  ])('%s', (_, commands, dealt) => {
    expect(bag.and(...commands).state.dealt).toMatchObject(dealt)
    expect(bag.and(...commands, undo).state.dealt).toMatchObject(dealt)
  })

  test('a stranger in a bag, and a bag that explains a count', () => {
    const stranger = bag.and(count(1, ['p1', 3], [null, 1]), {
      do: 'explain',
      difference: 'd1',
      how: { kind: 'unknown-piece', name: 'washer' },
      reason: 'nobody knows it',
    })
    expect(stranger.state.dealt.piece).toBe(2)
    const moved = bag.and(count(1, ['p1', 2]), {
      do: 'explain',
      difference: 'd1',
      how: { kind: 'moved', piece: 'p1', other: newBag },
      reason: 'two bags were open',
    })
    expect(moved.state.dealt.container).toBe(2)
    expect(moved.and({ do: 'open-container', kind: 'bag' }).state.hand).toBe(3)
  })

  test('work that deals none leaves them', () => {
    const before = bag.state.dealt
    expect(bag.and(putOn('p1'), { do: 'note', kind: 'note', text: 'x' }).state.dealt).toEqual(before)
    expect(bag.and(move('p1', at('bench')), undo).state.dealt).toEqual(before)
  })
})

test('the next number follows the highest, also of work that was taken back', () => {
  const job = bag.and(off(1, 'nut'), off(1, 'clip'), undo, undo, off(1, 'pin'))
  expect([...job.state.ledger.accounts.keys()]).toEqual(['p1', 'p4'])
  expect([...job.state.steps.keys()]).toEqual([1, 3])
})
