import { type Entry, parseEntry } from '../../../src/journal/entry.ts'
import type { JournalStore } from '../../../src/storage/journal/open-journal.ts'

/** A journal that no disk has: what the storage would take and hand back, line by line, without one. */
export function memoryStore(start: readonly Entry[] = []): JournalStore<Entry> {
  const entries = [...start]
  return {
    path: '/nowhere/journal.log',
    problem: null,
    setAside: [],
    readOnly: null,
    entries: () => entries,
    refresh: () => [],
    append(decide) {
      const fresh = (decide([]) ?? []).map((entry) => parseEntry(JSON.parse(JSON.stringify(entry))))
      entries.push(...fresh)
      return fresh
    },
    watch: () => () => undefined,
  }
}
