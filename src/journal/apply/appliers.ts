import type { EntryOf, EntryType } from '../entry.ts'
import type { State } from '../state.ts'

/** For each of some types of entry what follows from it. Throws where it cannot follow from what went before. */
export type AppliersOf<Types extends EntryType> = {
  [Type in Types]: (state: State, entry: EntryOf<Type>) => void
}
