import type { Entry, EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import { curedAt, minutesLate } from '../../plan/waiting/consumables.ts'
import type { ConsumableId } from '../../plan/waiting/waiting-facts.ts'

/** What was to be put on in a step, and when it was. */
export interface PutOnRecord {
  id: ConsumableId
  set: EntryOf<'consumable-set'>
  /** That it is not put on after all. */
  dropped: EntryOf<'consumable-dropped'> | null
  applied: { entry: EntryOf<'applied'>; stands: boolean }[]
  /** When it has set, in ISO 8601, where a time was given and it is on. */
  curedAt: string | null
  /** By how many minutes the joint was together too late; 0 where it was not. */
  late: number
}

/** Everything that was to be put on in a step, what was dropped as well. */
export function putOnIn(state: State, entries: readonly Entry[], step: number): PutOnRecord[] {
  return entries
    .filter((entry) => entry.type === 'consumable-set')
    .filter(({ consumable }) => consumable.step === step)
    .map((set) => {
      const { id } = set.consumable
      const facts = state.consumables.get(id)
      return {
        id,
        set,
        dropped:
          entries
            .filter((entry) => entry.type === 'consumable-dropped')
            .find((each) => each.consumable === id) ?? null,
        applied: entries
          .filter((entry) => entry.type === 'applied')
          .filter(({ consumable }) => consumable === id)
          .map((entry) => ({ entry, stands: facts?.applied?.n === entry.n })),
        curedAt: facts ? curedAt(state, facts) : null,
        late: facts ? minutesLate(state, facts) : 0,
      }
    })
}
