import type { Entry, EntryOf } from '../../journal/entry.ts'
import { foldOn } from '../../journal/fold.ts'
import { emptyState, type State } from '../../journal/state.ts'
import type { FluidId, MarkId } from '../../plan/facts.ts'
import { type AtHome, Homecomings } from './at-home.ts'
import { TurnsSeen } from './turns.ts'

/** What stands at the end, each thing with the entry that made it so. */
export interface Standing {
  home: AtHome[]
  turns: TurnsSeen
  confirmed: Map<MarkId, Entry>
  filled: Map<FluidId, Entry>
  overrides: Overridden[]
}

/** An override, and the entry that ended it: a reopening, a failure, a bolt in doubt. */
export interface Overridden {
  entry: EntryOf<'overridden'>
  ended: Entry | null
}

/** Tells the job once more, entry by entry, and watches what each of them makes of the state. */
export function whatStands(entries: readonly Entry[]): Standing {
  let state = emptyState()
  const home = new Homecomings()
  const turns = new TurnsSeen()
  const confirmed = new Map<MarkId, Entry>()
  const filled = new Map<FluidId, Entry>()
  const overrides: Overridden[] = []
  for (const entry of entries) {
    state = foldOn(state, entries, [entry])
    home.see(entry)
    turns.see(state, entry)
    if (entry.type === 'confirmed') confirmed.set(entry.mark, entry)
    if (entry.type === 'filled') filled.set(entry.fluid, entry)
    if (entry.type === 'overridden') overrides.push({ entry, ended: null })
    endOverrides(state, overrides, entry)
    if (!TAKES_BACK.has(entry.type)) continue
    for (const id of confirmed.keys()) if (!state.marks.get(id)?.confirmed) confirmed.delete(id)
    for (const id of filled.keys()) if (state.fluids.get(id)?.filledLitres === null) filled.delete(id)
  }
  return { home: home.all(), turns, confirmed, filled, overrides }
}

const TAKES_BACK = new Set<Entry['type']>(['stopped', 'reopened', 'failed'])

function endOverrides(state: State, overrides: Overridden[], by: Entry): void {
  for (const each of overrides) {
    if (each.ended === null && !state.overrides.has(each.entry.target)) each.ended = by
  }
}
