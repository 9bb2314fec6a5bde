import { interrupt } from '../../plan/tightening.ts'
import type { AppliersOf } from './appliers.ts'
import { stepOf } from './moves.ts'
import { withdraw } from './overrides.ts'

/** A job is opened, described, stopped for the day, cleared, started and closed. */
export const jobAppliers: AppliersOf<
  'opened' | 'described' | 'archived' | 'noted' | 'stopped' | 'cleared' | 'started' | 'closed'
> = {
  opened: (state, { job }) => {
    state.job = { ...job, archived: false }
  },
  described: (state, { name, machine, units }) => {
    if (name !== undefined) state.job.name = name
    if (machine !== undefined) state.job.machine = machine
    if (units !== undefined) state.job.units = units
  },
  archived: (state, { archived }) => {
    state.job.archived = archived
  },
  noted: (state, { n, step, kind, text, minutes }) => {
    state.notes.push({ n, step, kind, text, minutes })
  },
  stopped: (state, { n, at, step, note, abrupt }) => {
    for (const tightening of state.tightenings.values()) {
      // Nobody can have half turned a bolt of a step that is not under way.
      if (stepOf(state, tightening.step).built !== 'underway') continue
      interrupt(tightening, abrupt)
      // A bolt that may have been turned twice is not waved through, by an earlier override either.
      if (tightening.suspect) withdraw(state, tightening.id)
    }
    // A count that was broken off starts at nothing.
    for (const each of state.steps.values()) if (each.built === 'underway') each.turned = 0
    state.card = { n, at, step, note, abrupt }
  },
  cleared: (state) => {
    state.cleared = true
  },
  started: (state) => {
    state.started = true
  },
  closed: (state) => {
    state.closed = true
  },
}
