/** How the storage reads an entry back: those who open journals need it, and may not reach into the journal. */
export { type Entry, parseEntry } from '../journal/entry.ts'
