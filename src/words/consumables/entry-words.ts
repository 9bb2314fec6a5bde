import type { EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import { stepName } from '../names.ts'
import { consumableName } from './names.ts'
import { timesText } from './times.ts'

type ConsumableEntry = 'consumable-set' | 'consumable-dropped' | 'applied'

/** One line of history for what is put on in a step. */
export const consumableTellers: {
  [Type in ConsumableEntry]: (state: State, entry: EntryOf<Type>) => string
} = {
  'consumable-set': (state, { consumable }) => {
    const { id, step, name, side, expires, amount } = consumable
    const facts = [
      `${id}, to put on in ${stepName(state, step)}: ${name}`,
      side ? `${side} up` : '',
      ...timesText(state, consumable),
      expires ? `use by ${expires}` : '',
      amount ? `${amount} of it` : '',
    ]
    return facts.filter(Boolean).join(', ')
  },
  'consumable-dropped': (_, { consumable, reason }) => `${consumable} is not put on, because ${reason}`,
  applied: (state, { consumable: id }) => {
    const consumable = state.consumables.get(id)
    const times = consumable ? timesText(state, consumable) : []
    return [`put on: ${consumableName(state, id)}`, ...times].join(', ')
  },
}
