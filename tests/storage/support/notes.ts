import { NewerEntry } from '../../../src/journal/upgrades.ts'

/** The smallest entry that storage accepts, with something in it for a person to read. */
export interface Note {
  v: number
  n: number
  at: string
  id: string
  type: string
  text: string
}

/** The note with that number; `by` sets one author's ids apart from another's. */
export function note(n: number, text = `${n} cap bolts, tray slot ${n}`, by = 'a'): Note {
  return { v: 1, n, at: '2026-11-25T07:30:00.000Z', id: `${by}-${n}`, type: 'came-off', text }
}

export function notes(count: number, by = 'a'): Note[] {
  return Array.from({ length: count }, (_, index) => note(index + 1, undefined, by))
}

/** Accepts notes only. */
export function parseNote(raw: unknown): Note {
  const { v, n, at, id, type, text, ...rest } = (raw ?? {}) as Record<keyof Note, unknown>
  if (typeof v !== 'number' || typeof n !== 'number') throw new TypeError('a note needs its numbers')
  if (typeof at !== 'string' || typeof id !== 'string') throw new TypeError('a note needs its time and id')
  if (type !== 'came-off' || typeof text !== 'string') throw new TypeError('a note needs its text')
  if (Object.keys(rest).length > 0) throw new TypeError('a note has nothing else')
  return { v, n, at, id, type, text }
}

/** The same as a program that knows version 1 alone. */
export function parseFirstNote(raw: unknown): Note {
  const read = parseNote(raw)
  if (read.v > 1) throw new NewerEntry(read.v)
  return read
}
