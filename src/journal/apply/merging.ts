import type { EntryOf } from '../entry.ts'
import type { State } from '../state.ts'
import type { AppliersOf } from './appliers.ts'
import { containerState } from './containers.ts'
import { stepOf } from './moves.ts'

/** What of a copy did not fit stays owed until somebody says how it was settled. */
export const mergingAppliers: AppliersOf<'merged' | 'left-out-settled'> = {
  merged: (state, { n, copy, leftOut, inHand }) => {
    state.merge = n
    for (const { id, entry, at, by, says } of leftOut) {
      if (state.leftOut.has(id)) throw new Error(`${id} is there twice`)
      state.leftOut.set(id, { id, n, copy, entry, at, by, says, settled: null })
    }
    // What was taken over has withdrawn the clearance by itself, where it had to.
    if (leftOut.length > 0) state.cleared = false
    if (inHand) takeBackInHand(state, inHand)
  },
  'left-out-settled': (state, { leftOut, how }) => {
    const known = state.leftOut.get(leftOut)
    if (!known) throw new Error(`no left-out entry ${leftOut}`)
    known.settled = how
  },
}

/** The next bolt comes off at this bench: into its step and its bag, and into none of the copy. */
function takeBackInHand(
  state: State,
  { strip, build, hand }: NonNullable<EntryOf<'merged'>['inHand']>,
): void {
  if (state.strip !== null) stepOf(state, state.strip).stripping = false
  if (strip !== null) stepOf(state, strip).stripping = true
  if (build !== null) stepOf(state, build)
  if (hand !== null) containerState(state, hand)
  state.strip = strip
  state.build = build
  state.hand = hand
}
