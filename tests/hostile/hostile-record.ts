import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Entry, parseEntry } from '../../src/journal/entry.ts'
import { JOURNAL_NAME } from '../../src/storage/journal/journal-file.ts'
import { FILE_START, writeLine } from '../../src/storage/journal/line.ts'

/**
 * The same record with another text in the place of each that its schema leaves free: what was one text stays one, so
 * that positions and names still answer to each other. No line of ours would have written them; a copied file may hold them.
 */
export function retold(entries: readonly Entry[], text: (index: number) => string): unknown[] {
  const told = new Map<string, string>()
  return entries.map((entry) => {
    const raw = JSON.parse(JSON.stringify(entry))
    for (const { holder, key, value } of strings(raw)) {
      if (value === '') continue
      const index = told.size
      if (takes(raw, holder, key, `\x1b${'x'.repeat(400)}`)) told.set(value, told.get(value) ?? text(index))
      // An id, a currency, the kind of a gate: free, but short.
      else if (takes(raw, holder, key, '\x1b[31mxxx')) told.set(value, told.get(value) ?? `\x1b${index}`)
      else continue
      holder[key] = told.get(value)
    }
    return raw
  })
}

/** Writes a journal line by line, checksums right, as another program might have: its texts are as they are given. */
export function writeRaw(folder: string, entries: readonly unknown[]): void {
  let { crc } = FILE_START
  let journal = ''
  for (const entry of entries) {
    const line = writeLine(crc, entry)
    journal += line.text
    crc = line.crc
  }
  writeFileSync(join(folder, JOURNAL_NAME), journal)
}

interface Place {
  holder: Record<string, unknown>
  key: string
  value: string
}

function strings(value: unknown): Place[] {
  if (typeof value !== 'object' || value === null) return []
  const holder = value as Record<string, unknown>
  return Object.entries(holder).flatMap(([key, inner]) =>
    typeof inner === 'string' ? [{ holder, key, value: inner }] : strings(inner),
  )
}

/** Whether the schema would take that text there. */
function takes(raw: unknown, holder: Record<string, unknown>, key: string, text: string): boolean {
  const kept = holder[key]
  holder[key] = text
  try {
    parseEntry(raw)
    return true
  } catch {
    return false
  } finally {
    holder[key] = kept
  }
}
