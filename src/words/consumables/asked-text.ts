import type { State } from '../../journal/state.ts'
import type { ConsumableFacts } from '../../plan/waiting/waiting-facts.ts'
import { dayText } from '../days.ts'
import { consumableName } from './names.ts'
import { elapsedText, timesText } from './times.ts'

/** What is put on in a step, with all that was said of it: `s1, grey sealant, together within 5 min, not on yet`. */
export function askedText(state: State, consumable: ConsumableFacts): string {
  const { id, expires, amount, applied } = consumable
  const reason = state.overrides.get(id)
  const isOn = applied === null ? 'not on yet' : `on${elapsedText(state.clock.at, applied.at)}`
  return [
    consumableName(state, id),
    ...timesText(state, consumable),
    expires === undefined ? '' : `use by ${dayText(expires, state.clock.today)}`,
    amount === undefined ? '' : `${amount} of it`,
    reason === undefined ? isOn : `passed over: ${reason}`,
  ]
    .filter(Boolean)
    .join(', ')
}
