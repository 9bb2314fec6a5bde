import type { Entry } from '../entry.ts'
import { withdrawsClearance } from '../fold.ts'
import type { State } from '../state.ts'
import { referencesOf } from './references.ts'
import { type NameOf, type Side, type Touched, Touches } from './touches.ts'
import { noteTouches } from './what-is-touched.ts'

/**
 * What an entry touches.
 * @param state that of its own copy before it
 */
export function touchesOf(entry: Entry, state: State, nameOf: NameOf, side: Side): Touched {
  const touches = new Touches(state, nameOf, side)
  for (const { kind, no, isNew } of referencesOf(entry)) {
    if (kind !== 'entry') touches[isNew ? 'deals' : 'reads'].add(nameOf(kind, no))
  }
  if (withdrawsClearance(entry)) touches.work()
  noteTouches(touches, entry)
  return touches
}

/** What it touches to take an entry back, or to bring it back: all that it said, and all that got its number by it. */
export function touchesOfUndo(target: Entry, state: State, nameOf: NameOf, side: Side): Touched {
  const touched = touchesOf(target, state, nameOf, side)
  const changes = new Set([...touched.changes, ...touched.deals, `undo ${target.id}`])
  return { ...touched, changes, deals: new Set() }
}
