import type { Command } from '../../src/journal/command.ts'
import { decide } from '../../src/journal/decide/decide.ts'
import { ENTRY_VERSION, type Entry, type EntryBody } from '../../src/journal/entry.ts'
import { foldOn } from '../../src/journal/fold.ts'
import { emptyState, type State } from '../../src/journal/state.ts'
import type { Ledger } from '../../src/ledger/account.ts'

/** A job told by its commands: what was written, and what follows from it. */
export interface Told {
  entries: Entry[]
  state: State
}

/** Decides each command on what came of those before it. Throws with the code of a refusal. */
export function record(commands: readonly Command[], before: readonly Entry[] = []): Told {
  const entries = [...before]
  let state = foldOn(emptyState(), entries, entries)
  for (const [index, command] of commands.entries()) {
    const decision = decide(state, command)
    if (!decision.ok) {
      throw new Error(`command ${index + 1} (${command.do}) was refused: ${JSON.stringify(decision.refusal)}`)
    }
    const entry = numbered(decision.body, state.seq + 1)
    entries.push(entry)
    state = foldOn(state, entries, [entry])
  }
  return { entries, state }
}

/** An entry as the session would write it, with a time and an id that follow from its number. */
export function numbered(body: EntryBody, n: number): Entry {
  const at = new Date(Date.UTC(2030, 0, 1, 8, 0, n)).toISOString()
  return { v: ENTRY_VERSION, n, at, id: `e${n}`, ...body }
}

export const openJob: Command = {
  do: 'open-job',
  no: 7,
  name: 'blue twin',
  machine: 'the blue twin, top end',
  units: 'metric',
}

/** A state as one text, so that two can be compared whole: maps and sets in their order, nothing left out. */
export function stateText(state: State | Ledger): string {
  return JSON.stringify(timeless(state), (_key, value: unknown) => sortedKeys(plain(value)))
}

/** The same, faster, for states whose entries came the same way: the keys stand as they were written. */
export function quickText(state: State | Ledger): string {
  return JSON.stringify(timeless(state), (_key, value: unknown) => plain(value))
}

/** What an undo brings back is the record, not the hour. */
function timeless(state: State | Ledger): object {
  return 'clock' in state ? { ...state, clock: null } : state
}

function plain(value: unknown): unknown {
  if (value instanceof Map) return ['map', ...value]
  if (value instanceof Set) return ['set', ...value]
  return value
}

function sortedKeys(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value
  return Object.fromEntries(Object.entries(value).sort(([one], [two]) => (one < two ? -1 : 1)))
}
