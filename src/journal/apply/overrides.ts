import type { DecisionTarget } from '../../plan/facts.ts'
import type { State } from '../state.ts'

/** What an override stood for is no longer passed over. */
export function withdraw(state: State, target: DecisionTarget): void {
  state.overrides.delete(target)
  state.passedOver.delete(target)
}
