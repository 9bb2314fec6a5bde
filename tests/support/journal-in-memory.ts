import { type Entry, parseEntry } from '../../src/journal/entry.ts'
import type { JournalStore } from '../../src/storage/journal/open-journal.ts'

/**
 * A journal that no disk has: what the storage would take and hand back, line by line. Several programs may have it open;
 * each reads what the others wrote before it writes.
 */
export class JournalInMemory {
  readonly #entries: Entry[]

  constructor(start: readonly Entry[] = []) {
    this.#entries = [...start]
  }

  /** The journal as one program has read it. */
  opened(): JournalStore<Entry> {
    const all = this.#entries
    const known = [...all]
    const refresh = (): Entry[] => {
      const fresh = all.slice(known.length)
      known.push(...fresh)
      return fresh
    }
    return {
      path: '/nowhere/journal.log',
      problem: null,
      setAside: [],
      readOnly: null,
      entries: () => known,
      refresh,
      append(decide) {
        const made = (decide(refresh()) ?? []).map((entry) => parseEntry(JSON.parse(JSON.stringify(entry))))
        all.push(...made)
        known.push(...made)
        return made
      },
      watch: () => () => undefined,
    }
  }
}
