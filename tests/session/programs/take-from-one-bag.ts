import { existsSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import { parseEntry } from '../../../src/journal/entry.ts'
import { Session } from '../../../src/session/session.ts'
import { openJournal } from '../../../src/storage/journal/open-journal.ts'

// One of several who take from the same bag: moves one bolt at a time into a bag of its own, so many times. Says the id of
// each entry, or what it was refused with.
const [folder = '', bag = '', times = ''] = process.argv.slice(2)
const session = new Session(openJournal(folder, { parse: parseEntry, lockLimit: 60_000 }))

// All begin at once: the first would be done before the last is loaded.
writeSync(1, 'ready\n')
while (!existsSync(join(folder, 'go'))) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5)

for (let turn = 0; turn < Number(times); turn += 1) {
  const outcome = session.send({
    do: 'move',
    piece: 'p1',
    count: 1,
    from: 'c1',
    into: { kind: 'container', no: Number(bag) },
  })
  if (outcome.kind === 'not-recorded') throw outcome.error
  writeSync(1, outcome.kind === 'refused' ? `refused: ${outcome.refusal.code}\n` : `${outcome.entry.id}\n`)
}
