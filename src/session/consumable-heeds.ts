import type { State } from '../journal/state.ts'
import { minutesLate } from '../plan/waiting/consumables.ts'
import type { ConsumableId } from '../plan/waiting/waiting-facts.ts'
import type { Entry } from './stored-entry.ts'

export type ConsumableHeed =
  /** The first piece of a step goes on, and what was asked for is not on yet. */
  | { heed: 'not-put-on'; consumable: ConsumableId }
  /** A piece was fitted after the working time had run out, by so many minutes. */
  | { heed: 'fitted-late'; consumable: ConsumableId; late: number }

/** What is to be said about what is put on, when a piece is fitted. */
export function consumableHeeds(state: State, entry: Entry): ConsumableHeed[] {
  if (entry.type !== 'fitted') return []
  const own = [...state.consumables.values()].filter(
    ({ id, step }) => step === entry.step && !state.overrides.has(id),
  )
  return own.flatMap((consumable): ConsumableHeed[] => {
    const { id, applied } = consumable
    if (applied === null) return isFirst(state, entry) ? [{ heed: 'not-put-on', consumable: id }] : []
    const late = minutesLate(state, consumable)
    return late > 0 ? [{ heed: 'fitted-late', consumable: id, late }] : []
  })
}

/** Whether all that is home of the step was fitted just now. */
function isFirst({ ledger }: State, { step, moves }: Extract<Entry, { type: 'fitted' }>): boolean {
  const home = [...ledger.accounts.values()]
    .filter(({ piece, should }) => piece.step === step && should > 0)
    .reduce((sum, { at }) => sum + (at.get('machine') ?? 0), 0)
  return home === moves.reduce((sum, { count }) => sum + count, 0)
}
