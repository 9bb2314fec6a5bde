import type { Command } from '../journal/command.ts'
import { Line } from './line.ts'
import { readHowLong } from './read-said.ts'
import { misread } from './stopped.ts'

/**
 * After how many minutes the same person may look at a critical step a second time, where nobody says how many. A choice of
 * this program, not of a standard: long enough to have done something else in between.
 */
export const SECOND_LOOK_MINUTES = 30

/** Reads what makes a step critical, or no more: `critical`, `critical after 45 min`, `not critical`. Null for other words. */
export function takeCritical(line: Line, step: number): Command | null {
  if (line.take(/^not critical$/i)) return { do: 'change-step', step, critical: null }
  const [after] = line.take(/^critical(?:,? after(?: (.*))?)?$/i) ?? []
  if (after === undefined) return null
  const form = `step ${step} critical after 45 min`
  if (after === '' && /\bafter$/i.test(line.whole))
    misread({ code: 'missing', verb: line.verb, what: 'TIME', form })
  const { whole, verb, state } = line
  const minutes =
    after === ''
      ? SECOND_LOOK_MINUTES
      : readHowLong(new Line(whole, { verb, rest: '', form, state }), after).minutes
  return { do: 'change-step', step, critical: { afterMinutes: minutes } }
}
