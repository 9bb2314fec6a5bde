import { consumableName } from '../consumables/names.ts'
import { elapsedText } from '../consumables/times.ts'
import { say } from '../cures.ts'
import { dayText } from '../days.ts'
import { counted } from '../grammar.ts'
import { fluidName } from '../names.ts'
import { reasonLines } from '../reason-lines.ts'
import { told } from '../told.ts'
import type { Tellers } from './tellers.ts'

/** Refusals about what is put on in a step, and what waits until it has set. */
export const consumableRefusals: Tellers<'put-on-already' | 'out-of-date' | 'not-to-be-filled'> = {
  'put-on-already': (state, { consumable, isLate }) => {
    const { step = 0, applied = null } = state.consumables.get(consumable) ?? {}
    const since = applied === null ? '' : elapsedText(state.clock.at, applied.at)
    const again = `${say(`reopen ${step} because ...`)} opens the step again, then clean it off and put it on anew`
    return isLate
      ? told(
          `${consumableName(state, consumable)}, has been on${since}: its working time ran out before all was together`,
          again,
        )
      : told(
          `${consumableName(state, consumable)}, is on already${since}`,
          `go on with the step; if it has to come off, ${again}`,
        )
  },
  'out-of-date': ({ clock }, { consumable, name, expires, days }) =>
    told(
      `${name} was to be used by ${dayText(expires, clock.today)}, ${counted(days, 'day')} ago`,
      consumable === null
        ? 'take a fresh one, and say the date that stands on it'
        : `take a fresh one: ${say(`drop ${consumable} because ...`)}, then ask for it anew with its own date`,
    ),
  'not-to-be-filled': (state, { fluid, reasons }) =>
    told(
      `${fluidName(state, fluid)} may not be filled yet`,
      'fill it when that is over',
      reasonLines(state, reasons),
    ),
}
