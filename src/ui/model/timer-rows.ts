import { timersOf } from '../../session/timers.ts'
import { timerText } from '../../words/consumables/timer-words.ts'
import type { Line } from '../text/line.ts'
import { bulleted } from './rows.ts'
import type { Scene } from './scene.ts'

/** The times that run, each on a row: of one step, or of all. */
export function timerRows({ session, width }: Scene, step: number | null = null): Line[] {
  const state = session.stateNow()
  return timersOf(state)
    .filter(({ consumable }) => step === null || consumable.step === step)
    .flatMap((timer) => bulleted(timerText(state, timer), width))
}
