import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import type { Dealt } from '../../src/journal/dealt.ts'
import { decide } from '../../src/journal/decide/decide.ts'
import type { Entry } from '../../src/journal/entry.ts'
import { foldOn } from '../../src/journal/fold.ts'
import { emptyState } from '../../src/journal/state.ts'
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
import { numbered, openJob } from '../support/record.ts'

const pictures: Command = {
  do: 'add-pictures',
  pictures: ['1', '2'].map((file) => ({
    file,
    sha256: file.padStart(64, '0'),
    taken: null,
    belongs: null,
  })),
}
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
    ['two pictures', [pictures], { picture: 2 }],
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

test('labels take the next numbers for good, also where they are all that was written since an undo', () => {
  const job = bag.and({ do: 'deal-labels', count: 24 })
  expect(job.state.dealt.container).toBe(25)
  expect(job.and(undo, { do: 'open-container', kind: 'bag' }).state.hand).toBe(26)
  expect(job.and({ do: 'deal-labels', count: 24 }).state.dealt.container).toBe(49)
})

/** What may deal a number of a container or use one that was dealt to paper, in any order. */
const action = fc.oneof(
  fc.record({ do: fc.constant('deal-labels' as const), count: fc.integer({ min: 1, max: 4 }) }),
  fc.constant({ do: 'open-container', kind: 'bag' } as const),
  fc.constant(off(1, 'bolt', { into: newBag })),
  fc.nat(30).map((no) => off(1, 'nut', { into: { kind: 'container', no } })),
  fc.nat(30).map((no) => ({ do: 'open-container', kind: 'bag', no }) as const),
  fc.nat(30).map((container) => ({ do: 'void-container', container, reason: 'torn' }) as const),
  fc.constant(undo),
  fc.constant({ do: 'redo' } as const),
)

test('a number is never dealt twice over runs of labels, undo and containers', () => {
  let used = 0
  fc.assert(
    fc.property(fc.array(action, { maxLength: 40, size: 'max' }), (actions) => {
      const entries: Entry[] = []
      let state = emptyState()
      const onPaper = new Set<number>()
      const byHand = new Set<number>()
      for (const command of [openJob, ...actions]) {
        const decision = decide(state, command)
        if (!decision.ok) continue
        const entry = numbered(decision.body, state.seq + 1)
        const isUnused = (no: number) => state.blanks.get(no)?.voided === null
        if (entry.type === 'labels-dealt') {
          for (let no = entry.from; no <= entry.to; no += 1) {
            expect(onPaper.has(no) || byHand.has(no)).toBe(false)
            onPaper.add(no)
          }
        }
        const opened =
          entry.type === 'container-opened' ? entry.container : 'opened' in entry ? entry.opened : undefined
        if (opened && onPaper.has(opened.no)) {
          expect(isUnused(opened.no)).toBe(true)
          used += 1
        } else if (opened) {
          expect(byHand.has(opened.no)).toBe(false)
          byHand.add(opened.no)
        }
        entries.push(entry)
        state = foldOn(state, entries, [entry])
        for (const no of state.blanks.keys()) expect(state.containers.has(no)).toBe(false)
      }
      const numbers = [...onPaper, ...byHand].sort((a, b) => a - b)
      expect(numbers).toEqual(numbers.map((_, index) => index + 1))
      expect(state.dealt.container).toBe(numbers.length)
    }),
    { numRuns: 300 },
  )
  expect(used).toBeGreaterThan(50)
})
