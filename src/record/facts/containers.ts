import type { Entry, EntryOf } from '../../journal/entry.ts'
import type { ContainerState, State } from '../../journal/state.ts'

/** A container as it stands, and the entry that opened it. */
export interface ContainerRecord {
  container: ContainerState
  opened: Entry
}

/** What happened to labels and containers after they were opened. */
export type LabelEntry = EntryOf<'container-put' | 'container-voided' | 'labels-dealt' | 'labels-voided'>

/** Every container, void ones too, in the order in which they were opened. */
export function containersOf({ containers }: State, entries: readonly Entry[]): ContainerRecord[] {
  return entries.flatMap((opened) => {
    const container = containers.get(openedBy(opened) ?? 0)
    return container ? [{ container, opened }] : []
  })
}

function openedBy(entry: Entry): number | undefined {
  if (entry.type === 'container-opened') return entry.container.no
  return 'opened' in entry ? entry.opened?.no : undefined
}
