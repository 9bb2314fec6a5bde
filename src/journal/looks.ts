import { beneath, buildNeeds, isLast } from '../plan/order.ts'
import { resetSteps } from './apply/reset-steps.ts'
import type { State } from './state.ts'

/**
 * A last look holds only until something is touched where nobody can say what lies above it, and a last round is to be
 * gone again. Done steps keep their look.
 */
export function forgetLooks(state: State): void {
  for (const step of looked(state)) step.looked = false
  resetSteps(state, lastRounds(state))
}

/** A last look holds only until a step beneath is worked on; so does a last round, of which nearly all is beneath. */
export function forgetLooksAbove(state: State, no: number): void {
  const held = looked(state)
  if (held.length > 0) {
    const needs = buildNeeds(state.steps)
    for (const step of held) if (beneath(needs, step.no).has(no)) step.looked = false
  }
  endRoundsAbove(state, no)
}

/** A last round that was gone before a step beneath it was closed is to be gone again. */
export function endRoundsAbove(state: State, no: number): void {
  const rounds = lastRounds(state)
  if (rounds.length === 0) return
  const needs = buildNeeds(state.steps)
  resetSteps(
    state,
    rounds.filter((round) => beneath(needs, round).has(no)),
  )
}

function looked(state: State) {
  return [...state.steps.values()].filter((step) => step.looked && step.built !== 'done')
}

/** The last steps of the way back that are done or under way. */
function lastRounds({ steps }: State): number[] {
  return [...steps.values()]
    .filter((step) => isLast(step) && (step.built === 'done' || step.built === 'underway'))
    .map(({ no }) => no)
}
