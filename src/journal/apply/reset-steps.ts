import { isLast } from '../../plan/order.ts'
import { freshGrid } from '../../plan/tightening.ts'
import type { State } from '../state.ts'
import { stepOf } from './moves.ts'
import { withdraw } from './overrides.ts'

/** Steps are to be done again: what was confirmed, tightened, filled, seen and overridden in them no longer holds. */
export function resetSteps(state: State, steps: readonly number[]): void {
  if (steps.length === 0) return
  const reopened = new Set(steps)
  for (const no of reopened) {
    const step = stepOf(state, no)
    step.built = 'redo'
    step.turned = 0
    step.work = null
    state.secondLooks.delete(no)
    withdrawGates(state, no)
    if (isLast(step)) state.agreed.clear()
  }
  for (const consumable of state.consumables.values()) {
    if (!reopened.has(consumable.step)) continue
    consumable.applied = null
    withdraw(state, consumable.id)
  }
  for (const mark of state.marks.values()) {
    if (!reopened.has(mark.step)) continue
    mark.confirmed = false
    withdraw(state, mark.id)
  }
  for (const fluid of state.fluids.values()) {
    if (!reopened.has(fluid.step)) continue
    fluid.filledLitres = null
    withdraw(state, fluid.id)
  }
  for (const tightening of state.tightenings.values()) {
    if (!reopened.has(tightening.step)) continue
    withdraw(state, tightening.id)
    tightening.done = freshGrid(tightening.passes)
    tightening.suspect = null
  }
  if (state.build !== null && reopened.has(state.build)) state.build = null
}

/** No override of a step's gates holds any more. */
export function withdrawGates(state: State, no: number): void {
  for (const gate of ['start', 'finish', 'look', 'check'] as const) withdraw(state, `${gate} ${no}`)
}
