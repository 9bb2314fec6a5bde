import type { State } from '../../journal/state.ts'
import type { ConsumableId } from '../../plan/waiting/waiting-facts.ts'

/** What is put on: `s1, grey sealant on the sump face`. */
export function consumableName(state: State, id: ConsumableId): string {
  const { name, side } = state.consumables.get(id) ?? {}
  return name === undefined ? id : `${id}, ${name}${side ? `, ${side} up` : ''}`
}
