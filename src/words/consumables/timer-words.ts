import type { State } from '../../journal/state.ts'
import type { Timer } from '../../session/timers.ts'
import { say } from '../cures.ts'
import { consumableName } from './names.ts'
import { heldUpText, leftText } from './times.ts'

/** A time that runs, in one line: `s1, grey sealant on the sump face: put the joint together, 4 min to go`. */
export function timerText(state: State, timer: Timer): string {
  const { consumable, kind, isOver } = timer
  const name = consumableName(state, consumable.id)
  const left = leftText(state.clock.at, timer)
  if (isOver) {
    return `${name}: its working time has run out, and the joint is not together: ${overWords(state, timer)}`
  }
  if (kind === 'work') return `${name}: put the joint together, ${left}`
  const held = consumable.before.length === 0 ? '' : `, then ${heldUpText(state, consumable.before)}`
  return `${name}: sets, ${left}${held}`
}

/** The same for large letters, beside which there is room for little: `4 min to go`. */
export function timerBrief(state: State, timer: Timer): string {
  if (timer.isOver) return 'working time has run out'
  return `${timer.kind === 'set' ? 'sets: ' : ''}${leftText(state.clock.at, timer)}`
}

/** Nothing fitted since: it can be put on anew. Else the joint comes apart first. */
function overWords(state: State, { consumable: { id, step, applied } }: Timer): string {
  const fittedAt = state.steps.get(step)?.work?.fittedAt ?? null
  const isFittedOn = applied !== null && fittedAt !== null && fittedAt > applied.at
  const again = `clean it off, then ${say(`applied ${id}`)} when it is on anew`
  return isFittedOn ? `${say(`reopen ${step} because ...`)}, ${again}` : again
}
