import { beneath, buildNeeds } from '../plan/order.ts'
import type { State } from './state.ts'

/** A last look holds only until something is touched where nobody can say what lies above it. Done steps keep theirs. */
export function forgetLooks(state: State): void {
  for (const step of looked(state)) step.looked = false
}

/** A last look holds only until a step beneath is worked on. */
export function forgetLooksAbove(state: State, no: number): void {
  const held = looked(state)
  if (held.length === 0) return
  const needs = buildNeeds(state.steps)
  for (const step of held) if (beneath(needs, step.no).has(no)) step.looked = false
}

function looked(state: State) {
  return [...state.steps.values()].filter((step) => step.looked && step.built !== 'done')
}
