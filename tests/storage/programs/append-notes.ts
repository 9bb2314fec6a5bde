import { writeSync } from 'node:fs'
import { openJournal } from '../../../src/storage/journal/open-journal.ts'
import { note, parseNote } from '../support/notes.ts'

// Appends `count` notes, and says the id of each once it is recorded.
const [folder = '', by = '', count = ''] = process.argv.slice(2)
const store = openJournal(folder, { parse: parseNote, lockLimit: 15_000 })

for (let number = 1; number <= Number(count); number += 1) {
  store.append(() => [{ ...note(store.entries().length + 1), id: `${by}-${number}` }])
  writeSync(1, `${by}-${number}\n`)
}
