import { writeSync } from 'node:fs'
import { openJournal } from '../../../src/storage/open-journal.ts'
import { note, parseNote } from '../support/notes.ts'

// Appends `count` notes, or notes without end, and says the id of each once it is recorded.
const [folder = '', by = '', count = '', size = '0'] = process.argv.slice(2)
const store = openJournal(folder, { parse: parseNote, lockLimit: 15_000 })
const last = count === 'endless' ? Number.POSITIVE_INFINITY : Number(count)

for (let number = 1; number <= last; number += 1) {
  const text = 'x'.repeat(Math.floor(Math.random() * Number(size)))
  store.append(() => [{ ...note(store.entries().length + 1, text), id: `${by}-${number}` }])
  writeSync(1, `${by}-${number}\n`)
}
