import { elapsedText } from '../consumables/times.ts'
import { say } from '../cures.ts'
import { counted } from '../grammar.ts'
import { fluidName } from '../names.ts'
import { reasonText } from '../reasons.ts'
import { told } from '../told.ts'
import { consumableName } from '../waiting/names.ts'
import type { Tellers } from './tellers.ts'

/** Refusals about what is put on in a step, and what waits until it has set. */
export const consumableRefusals: Tellers<'put-on-already' | 'out-of-date' | 'not-to-be-filled'> = {
  'put-on-already': (state, { consumable, isLate }) => {
    const { step = 0, applied = null } = state.consumables.get(consumable) ?? {}
    const since = applied === null ? '' : elapsedText(state.clock.at, applied.at)
    const again = `${say(`reopen ${step} because ...`)} opens the step again, then clean it off and put it on anew`
    return isLate
      ? told(
          `${consumableName(state, consumable)}, has been on${since}, longer than it may, and pieces were fitted on it`,
          again,
        )
      : told(
          `${consumableName(state, consumable)}, is on already${since}`,
          `go on with the step; if it has to come off, ${again}`,
        )
  },
  'out-of-date': (_, { name, expires, days }) =>
    told(
      `${name}: it was to be used by ${expires}, ${counted(days, 'day')} ago`,
      `take a fresh one and say its own date, as ${say('use by 31 Dec')}`,
    ),
  'not-to-be-filled': (state, { fluid, reasons }) =>
    told(
      `${fluidName(state, fluid)} may not be filled yet`,
      'fill it when that is over',
      reasons.map((reason) => reasonText(state, reason)),
    ),
}
