import { holdingsIn } from '../../ledger/ledger.ts'
import type { StepFacts } from '../../plan/facts.ts'
import { isLast } from '../../plan/order.ts'
import type { StripStep } from '../entry.ts'
import { forgetLooks, forgetLooksAbove } from '../looks.ts'
import type { State } from '../state.ts'
import type { AppliersOf } from './appliers.ts'
import { stepOf } from './moves.ts'

/** Steps that are planned by hand. */
export const stepAppliers: AppliersOf<'step-added' | 'step-changed'> = {
  'step-added': (state, { step, before }) => {
    state.steps.set(step.no, { ...freshStep(step.no, step.title), ...step, needs: [...step.needs] })
    for (const upper of before) stepOf(state, upper).needs.push(step.no)
    forgetLooksAbove(state, step.no)
  },
  'step-changed': (state, { step: no, title, after, needs, hides, minutes, critical }) => {
    const step = stepOf(state, no)
    if (title !== undefined) step.title = title
    if (after !== undefined) step.after = [...after]
    if (needs !== undefined) step.needs = [...needs]
    if (hides !== undefined) step.hides = hides
    if (minutes !== undefined) step.minutes = minutes
    if (critical !== undefined) step.critical = critical ?? undefined
    if (title === undefined && after === undefined && needs === undefined && hides === undefined) return
    step.looked = false
    if (after !== undefined || needs !== undefined) forgetLooks(state)
  },
}

function freshStep(no: number, title: string): StepFacts {
  return {
    no,
    title,
    way: 'both',
    kind: 'refit',
    after: [],
    needs: [],
    hides: false,
    turned: 0,
    stripping: false,
    built: 'open',
    looked: false,
    work: null,
  }
}

/** A new strip step ends the one before it: the hands have moved on. */
export function beginStrip(state: State, { no, title, after, hides }: StripStep): void {
  if (state.strip !== null) stepOf(state, state.strip).stripping = false
  state.steps.set(no, { ...freshStep(no, title), after: [...after], hides, stripping: true })
  state.strip = no
  // A bag that was opened for it beforehand stays in hand.
  if (state.hand !== null && holdingsIn(state.ledger, state.hand).length > 0) state.hand = null
}

/** A step is taken up on the way back. */
export function takeUp(state: State, no: number): void {
  forgetLooksAbove(state, no)
  const step = stepOf(state, no)
  step.built = 'underway'
  step.turned = 0
  // What was counted before it is counted again: the hands go round once more.
  if (isLast(step)) state.agreed.clear()
  state.build = no
}
