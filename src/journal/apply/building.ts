import type { Move } from '../../ledger/account.ts'
import type { EntryOf } from '../entry.ts'
import { endRoundsAbove, forgetLooks, forgetLooksAbove } from '../looks.ts'
import type { State } from '../state.ts'
import type { AppliersOf } from './appliers.ts'
import { carry, stepOf } from './moves.ts'
import { resetSteps, withdrawGates } from './reset-steps.ts'
import { takeUp } from './steps.ts'
import { isSingleUse } from './stripping.ts'

/** The way back, step by step, and what takes it back. */
export const buildingAppliers: AppliersOf<
  | 'build-began'
  | 'fitted'
  | 'confirmed'
  | 'filled'
  | 'turned-over'
  | 'looked'
  | 'build-done'
  | 'failed'
  | 'reopened'
  | 'overridden'
> = {
  'build-began': (state, { step }) => takeUp(state, step),
  fitted: (state, { step, began, moves }) => {
    if (began) takeUp(state, step)
    carry(state, moves)
    forgetLooksAbove(state, step)
    if (stepOf(state, step).built === 'underway') state.build = step
  },
  confirmed: (state, { mark }) => {
    markOf(state, mark).confirmed = true
  },
  filled: (state, { fluid, litres }) => {
    const known = state.fluids.get(fluid)
    if (!known) throw new Error(`no fluid ${fluid}`)
    known.filledLitres = litres
  },
  'turned-over': (state, { step: no, began }) => {
    if (began) takeUp(state, no)
    stepOf(state, no).turned += 1
  },
  looked: (state, { step }) => {
    stepOf(state, step).looked = true
  },
  'build-done': (state, { step }) => {
    stepOf(state, step).built = 'done'
    endRoundsAbove(state, step)
    if (state.build === step) state.build = null
  },
  failed: (state, { step, steps, moves }) => {
    stepOf(state, step).built = 'redo'
    stepOf(state, step).turned = 0
    stepOf(state, step).work = null
    state.secondLooks.delete(step)
    // What failed was not in order, whatever an override had said of it.
    withdrawGates(state, step)
    reopen(state, steps, moves)
    if (state.build === step) state.build = null
  },
  reopened: (state, { steps, moves }) => reopen(state, steps, moves),
  overridden: (state, { target, reason, gates }) => {
    const known = state.overrides.get(target)
    state.overrides.set(target, known === undefined ? reason : `${known}; ${reason}`)
    state.passedOver.set(target, new Set([...(state.passedOver.get(target) ?? []), ...gates]))
  },
}

/** Takes the given steps back with their pieces; a single-use piece that comes off again is used. */
function reopen(state: State, steps: readonly number[], moves: readonly Move[]): void {
  carry(state, moves)
  for (const { piece, from } of moves) {
    if (from === 'machine' && isSingleUse(state, piece)) state.used.add(piece)
  }
  resetSteps(state, steps)
  forgetLooks(state)
}

function markOf(state: State, id: EntryOf<'confirmed'>['mark']) {
  const mark = state.marks.get(id)
  if (!mark) throw new Error(`no mark ${id}`)
  return mark
}
