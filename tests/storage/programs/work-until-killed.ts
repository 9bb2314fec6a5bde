import { writeSync } from 'node:fs'
import { parseEntry } from '../../../src/journal/entry.ts'
import { Session } from '../../../src/session/session.ts'
import { openJournal } from '../../../src/storage/journal/open-journal.ts'
import { chanceOf } from '../../support/damage/chance.ts'
import { dyingFileSystem } from '../support/dying-file-system.ts'
import { commandByChance } from '../support/work-by-chance.ts'

// Opens a job and works in it, and says the id of each entry once it is recorded. Where a call to the file system is
// named, it dies in the first such call.
const [folder = '', seed = '', diesIn = ''] = process.argv.slice(2)
const fs = diesIn === '' ? undefined : dyingFileSystem(diesIn, say)
const session = new Session(openJournal(folder, { parse: parseEntry, lockLimit: 20_000, fs }))
const chance = chanceOf(Number(seed))

// Somebody is to kill it long before the end.
for (let turn = 0; turn < 20_000; turn += 1) {
  const outcome = session.send(commandByChance(session.state, chance))
  if (outcome.kind === 'not-recorded') throw outcome.error
  if (outcome.kind === 'recorded') say(outcome.entry.id)
  if (diesIn !== '' && turn > 20) throw new Error(`it never came to ${diesIn}`)
}

function say(line: string): void {
  writeSync(1, `${line}\n`)
}
