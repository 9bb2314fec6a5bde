import type { AppliersOf } from './appliers.ts'

/** What of a copy did not fit stays owed until somebody says how it was settled. */
export const mergingAppliers: AppliersOf<'merged' | 'left-out-settled'> = {
  merged: (state, { n, copy, leftOut }) => {
    state.merge = n
    for (const { id, entry, at, by, says } of leftOut) {
      if (state.leftOut.has(id)) throw new Error(`${id} is there twice`)
      state.leftOut.set(id, { id, n, copy, entry, at, by, says, settled: null })
    }
    // What was taken over has withdrawn the clearance by itself, where it had to.
    if (leftOut.length > 0) state.cleared = false
  },
  'left-out-settled': (state, { leftOut, how }) => {
    const known = state.leftOut.get(leftOut)
    if (!known) throw new Error(`no left-out entry ${leftOut}`)
    known.settled = how
  },
}
