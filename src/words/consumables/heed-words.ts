import type { State } from '../../journal/state.ts'
import type { ConsumableHeed } from '../../session/consumable-heeds.ts'
import { say } from '../cures.ts'
import { durationWords } from '../durations.ts'
import { sentence } from '../grammar.ts'
import { consumableName } from './names.ts'

/** What is said about what is put on, beside a piece that was fitted. */
export function consumableHeedText(state: State, heed: ConsumableHeed): string {
  const { consumable: id } = heed
  const name = consumableName(state, id)
  if (heed.heed === 'not-put-on')
    return sentence(`${name}, is not on as far as the record knows: ${say(`applied ${id}`)} if it is`)
  const { step = 0 } = state.consumables.get(id) ?? {}
  return sentence(
    `fitted ${durationWords(heed.late)} after the working time of ${name}, had run out: ${say(`reopen ${step} because ...`)}, clean it off and put it on anew`,
  )
}
