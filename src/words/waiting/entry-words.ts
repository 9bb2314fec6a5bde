import type { EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import { consumableTellers } from '../consumables/entry-words.ts'
import { stepName } from '../names.ts'
import { secondLineName } from '../second-look-text.ts'
import { orderTellers } from './order-entries.ts'
import { outingTellers } from './outing-entries.ts'

type WaitingEntry =
  | 'order-lined'
  | 'order-changed'
  | 'order-returned'
  | 'part-noted'
  | 'sent-out'
  | 'came-back'
  | 'consumable-set'
  | 'consumable-dropped'
  | 'applied'
  | 'seen-again'

/** One line of history for orders, what is out of the house, what is put on and what is seen twice. */
export const waitingTellers: { [Type in WaitingEntry]: (state: State, entry: EntryOf<Type>) => string } = {
  ...orderTellers,
  ...outingTellers,
  ...consumableTellers,

  'seen-again': (state, { step, line, says }) =>
    `seen again, ${stepName(state, step)}: ${secondLineName(state, line)}: ${says}`,
}
