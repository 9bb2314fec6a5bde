import type { State } from '../../journal/state.ts'
import type { ConsumableFacts, CureTarget } from '../../plan/waiting/waiting-facts.ts'
import { durationWords } from '../durations.ts'
import { joined } from '../grammar.ts'
import { fluidName, stepName } from '../names.ts'

/** How long ago something was, where the clock says: ` for 12 min`, and nothing within the first minute. */
export function elapsedText(now: string, since: string): string {
  const minutes = Math.floor((Date.parse(now) - Date.parse(since)) / 60_000)
  return minutes > 0 ? ` for ${durationWords(minutes)}` : ''
}

/** How long is left until a time: `3 h 20 min to go`; that the clock stands wrong, where it shows a time before the start. */
export function leftText(now: string, { from, until }: { from: string; until: string }): string {
  const [asked, began] = [Date.parse(now), Date.parse(from)]
  // It is asked to the second, and was put on to the thousandth.
  if (asked <= began - 1000) return CLOCK_BEHIND
  const minutes = Math.ceil((Date.parse(until) - Math.max(asked, began)) / 60_000)
  return `${durationWords(Math.max(0, minutes))} to go`
}

/** What is said where a time lies ahead that has been. */
const CLOCK_BEHIND = "this computer's clock stands before the time when it was put on: set it right"

/** What sets holds up: `step 3, Sump, the filling of coolant and the first start`. */
export function heldUpText(state: State, before: readonly CureTarget[]): string {
  return joined(
    before.map((target) => {
      if (target === 'start') return 'the first start'
      return typeof target === 'number'
        ? stepName(state, target)
        : `the filling of ${fluidName(state, target)}`
    }),
  )
}

type Times = Pick<ConsumableFacts, 'workMinutes' | 'cureMinutes'> & { before: readonly CureTarget[] }

/** The times of what is put on: within what it is together, how long it sets and what that holds up. */
export function timesText(state: State, { workMinutes, cureMinutes, before }: Times): string[] {
  const held = before.length > 0 ? heldUpText(state, before) : ''
  const sets = cureMinutes === undefined ? '' : `sets ${durationWords(cureMinutes)}${held ? ' ' : ''}`
  return [
    workMinutes === undefined ? '' : `together within ${durationWords(workMinutes)}`,
    held ? `${sets}before ${held}` : sets,
  ].filter(Boolean)
}
