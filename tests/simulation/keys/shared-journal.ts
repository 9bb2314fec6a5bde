import { type Entry, parseEntry } from '../../../src/journal/entry.ts'
import type { JournalStore } from '../../../src/storage/journal/open-journal.ts'

/** A journal that no disk has, open at several terminals: each reads what the others wrote before it writes. */
export class SharedJournal {
  readonly #entries: Entry[] = []

  /** The journal as one terminal has read it. */
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
