import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { heedsAfter } from '../../src/session/heeds.ts'
import { repeatedWork } from '../../src/session/repeated-work.ts'
import { heedText } from '../../src/words/heeds.ts'
import { begin, done, end, fitted, job, off, set } from '../errors/commands.ts'
import { play } from '../errors/play.ts'

const critical: Command = { do: 'change-step', step: 1, critical: { afterMinutes: 30 } }

/** A set that comes off and goes back, position by position; and what is heeded when the step is closed. */
function heeded(positions: string[], ...more: Command[]): string[] {
  const { state, entries } = play([
    job,
    begin('Caps off'),
    set('cam caps', positions),
    off(8, 'cap bolts'),
    end,
    ...more,
    ...positions.map((position, index) => fitted({ piece: `p${index + 1}`, position })),
    fitted(`p${positions.length + 1}`),
    done(1),
  ])
  const last = entries.at(-1)
  return last
    ? heedsAfter(state, last).flatMap((heed) => (heed.heed === 'repeated' ? [heedText(state, heed)] : []))
    : []
}

describe('the same work at several positions by one person', () => {
  test('is worth a second look, from the other end', () =>
    expect(heeded(['I1', 'I2', 'I3'])).toEqual([
      'One person put on all 3, from cam cap I1 to cam cap I3: a slip would be the same at each. Look again at some of them from the last to the first; "step 1 critical" asks for a second look at every one.',
    ]))

  test('two are no habit yet', () => expect(heeded(['I1', 'I2'])).toEqual([]))

  test('nothing is said where every one is seen again anyway', () =>
    expect(heeded(['I1', 'I2', 'I3'], critical)).toEqual([]))

  test('common fasteners are a matter of their tightening', () => {
    const { state } = play([job, begin('Caps off'), off(8, 'cap bolts'), end, fitted('p1'), done(1)])
    expect(repeatedWork(state, 1)).toEqual([])
  })

  test('nor is anything said where two people shared it', () => {
    const { state } = play([job, begin('Caps off'), set('cam caps', ['I1', 'I2', 'I3']), end])
    const on = (...by: string[]) => {
      for (const piece of state.ledger.accounts.values()) piece.at = new Map([['machine', 1]])
      const step = state.steps.get(1)
      if (step) step.work = { by, at: '2030-01-01T08:00:00.000Z', fittedAt: null }
      return repeatedWork(state, 1).map(({ pieces }) => pieces)
    }
    expect(on('Anna')).toEqual([['p1', 'p2', 'p3']])
    expect(on('')).toEqual([['p1', 'p2', 'p3']])
    expect(on('Anna', 'Ben')).toEqual([])
  })
})
