import { ENTRY_VERSION } from '../../src/journal/entry.ts'
import { openJournal } from '../../src/storage/journal/open-journal.ts'

/** Writes one more entry into a job's folder as the next putback may: a version and a kind that nobody knows here. */
export function goOnAsNewer(folder: string, version = ENTRY_VERSION + 1): void {
  const store = openJournal(folder, { parse: (raw) => raw as { n: number; id: string } })
  const n = store.entries().length + 1
  const entry = { v: version, n, at: '2031-01-01T08:00:00.000Z', id: `newer-${n}`, type: 'turned-inside-out' }
  store.append(() => [entry])
}
