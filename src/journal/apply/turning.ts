import { accountOf } from '../../ledger/ledger.ts'
import { freshGrid } from '../../plan/tightening.ts'
import type { EntryOf } from '../entry.ts'
import { drawnOnce, orderedOnce } from '../once.ts'
import type { State } from '../state.ts'
import type { AppliersOf } from './appliers.ts'
import { stepOf } from './moves.ts'
import { withdraw } from './overrides.ts'
import { beginStrip } from './steps.ts'

/** Fasteners are turned: tightened pass by pass, and eased before. */
export const turningAppliers: AppliersOf<
  | 'tightening-set'
  | 'tightened'
  | 'condition-said'
  | 'wrench-chosen'
  | 'torque-missed'
  | 'angle-settled'
  | 'slackened'
  | 'loosening-set'
  | 'loosened'
> = {
  'tightening-set': (state, { tightening }) => {
    for (const piece of [tightening.piece, ...(tightening.with ?? [])]) accountOf(state.ledger, piece)
    stepOf(state, tightening.step)
    orderedOnce(tightening)
    state.tightenings.set(tightening.id, { ...tightening, done: freshGrid(tightening.passes), suspect: null })
  },
  tightened: (state, { tightening: id, pass, fastener }) => {
    const tightening = tighteningOf(state, id)
    const through = tightening.done[pass]
    if (!through || !tightening.order.includes(fastener))
      throw new Error(`no ${fastener} in pass ${pass + 1} of ${id}`)
    through.add(fastener)
    tightening.suspect = null
  },
  'condition-said': (state, { tightening, condition }) => {
    tighteningOf(state, tightening).condition = condition
  },
  'wrench-chosen': (state, { tightening, wrench }) => {
    tighteningOf(state, tightening).wrench = wrench
  },
  'torque-missed': (state, { tightening: id, fastener, fault, says }) => {
    const tightening = tighteningOf(state, id)
    accountOf(state.ledger, fault.piece)
    if (!tightening.order.includes(fastener)) throw new Error(`no ${fastener} in ${id}`)
    const { step, done, suspect } = tightening
    state.faults.set(fault.id, { ...fault, step, settled: null, in: { tightening: id, fastener, says } })
    // Whatever is done about it, this fastener goes through every pass once more.
    for (const through of done) through.delete(fastener)
    if (suspect?.fastener === fastener) tightening.suspect = null
    // What was waved through before, this fastener was not.
    withdraw(state, id)
  },
  'angle-settled': (state, { tightening: id, fastener, turned }) => {
    const tightening = tighteningOf(state, id)
    if (turned && tightening.suspect) tightening.done[tightening.suspect.pass]?.add(fastener)
    tightening.suspect = null
  },
  slackened: (state, { tightening: id }) => {
    const tightening = tighteningOf(state, id)
    tightening.done = freshGrid(tightening.passes)
    tightening.suspect = null
  },
  'loosening-set': (state, { loosening, began }) => {
    if (began) beginStrip(state, began)
    const { id, passes, step, layout } = loosening
    stepOf(state, step)
    orderedOnce(loosening)
    if (layout) drawnOnce(layout.places)
    state.loosenings.set(id, { ...loosening, done: freshGrid(passes), suspect: null })
  },
  loosened: (state, { loosening: id, pass, fastener }) => {
    const loosening = state.loosenings.get(id)
    const through = loosening?.done[pass]
    if (!loosening?.order.includes(fastener) || !through)
      throw new Error(`no ${fastener} in pass ${pass + 1} of ${id}`)
    through.add(fastener)
  },
}

function tighteningOf(state: State, id: EntryOf<'tightened'>['tightening']) {
  const tightening = state.tightenings.get(id)
  if (!tightening) throw new Error(`no tightening ${id}`)
  return tightening
}
