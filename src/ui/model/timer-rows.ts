import { timersOf } from '../../session/timers.ts'
import { askedText } from '../../words/consumables/asked-text.ts'
import { timerBrief, timerText } from '../../words/consumables/timer-words.ts'
import type { Line } from '../text/line.ts'
import { bulleted } from './rows.ts'
import type { Scene } from './scene.ts'

/** The times that run in a step, for large letters; by name where there are several. */
export function timersInBrief({ session }: Scene, step: number): string[] {
  const state = session.stateNow()
  const timers = timersOf(state).filter(({ consumable }) => consumable.step === step)
  return timers.map((timer) => {
    const left = timerBrief(state, timer)
    return timers.length === 1 ? left : `${timer.consumable.id}: ${left}`
  })
}

/** The times that run, each on a row, of one step. */
export function timerRows({ session, width }: Scene, step: number): Line[] {
  const state = session.stateNow()
  return timersOf(state)
    .filter(({ consumable }) => consumable.step === step)
    .flatMap((timer) => bulleted(timerText(state, timer), width))
}

/** All the times that run, in words. */
export function timerTexts({ session }: Pick<Scene, 'session'>): string[] {
  const state = session.stateNow()
  return timersOf(state).map((timer) => timerText(state, timer))
}

/** What is put on in a step, with the times that were said. */
export function askedRows({ session, width }: Scene, step: number): Line[] {
  const state = session.stateNow()
  return [...state.consumables.values()]
    .filter((consumable) => consumable.step === step)
    .flatMap((consumable) => bulleted(askedText(state, consumable), width))
}
