import type { State } from '../../journal/state.ts'
import type { WaitingReason } from '../../plan/waiting/waiting-reasons.ts'
import { say } from '../cures.ts'
import { durationWords } from '../durations.ts'
import { consumableName } from './names.ts'
import { leftText } from './times.ts'

type ConsumableReason = Extract<WaitingReason, { code: 'consumable-due' | 'worked-late' | 'curing' }>

/** What is still to be put on, was put together too late, or has not set: what, and what lifts it. */
export function consumableParts(state: State, reason: ConsumableReason): { what: string; cure: string } {
  const name = consumableName(state, reason.consumable)
  const { step = 0 } = state.consumables.get(reason.consumable) ?? {}
  switch (reason.code) {
    case 'consumable-due':
      return { what: `${name}, not put on`, cure: `${say(`applied ${reason.consumable}`)} when it is on` }
    case 'worked-late':
      return {
        what: `${name}, the joint was together ${durationWords(reason.late)} too late`,
        cure: `${say(`reopen ${step} because ...`)}, clean it off, then ${say(`applied ${reason.consumable}`)} when it is on anew`,
      }
    case 'curing':
      return {
        what: `${name}, must set, ${leftText(state.clock.at, spanOf(state, reason))}`,
        cure: `wait, as its maker says, or ${say(`override ${reason.consumable} because ...`)}`,
      }
    default:
      return reason satisfies never
  }
}

function spanOf(state: State, { consumable, until }: Extract<ConsumableReason, { code: 'curing' }>) {
  const { cureMinutes = 0 } = state.consumables.get(consumable) ?? {}
  return { from: new Date(Date.parse(until) - cureMinutes * 60_000).toISOString(), until }
}
