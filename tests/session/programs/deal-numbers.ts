import { existsSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import { parseEntry } from '../../../src/journal/entry.ts'
import { Session } from '../../../src/session/session.ts'
import { openJournal } from '../../../src/storage/journal/open-journal.ts'

// One of several at work in one job: deals labels, opens containers, fills and voids unused labels, takes back. Says
// each number that it was given, and what it did with a label.
const [folder = '', seed = '1', count = ''] = process.argv.slice(2)
const session = new Session(openJournal(folder, { parse: parseEntry, lockLimit: 15_000 }))
let chance = Number(seed)

// All begin at once: the first would be done before the last is loaded.
writeSync(1, '"ready"\n')
while (!existsSync(join(folder, 'go'))) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5)

for (let turn = 0; turn < Number(count); turn += 1) {
  const pick = next(6)
  const unused = [...session.state.blanks].filter(([, { voided }]) => voided === null).map(([no]) => no)
  const label = unused[next(Math.min(3, unused.length || 1))]
  if (pick === 0) say(session.send({ do: 'deal-labels', count: 1 + next(4) }))
  else if (pick === 1) say(session.send({ do: 'open-container', kind: 'bag' }))
  else if (pick === 2) say(session.send({ do: 'undo' }))
  else if (pick === 3) say(session.send({ do: 'redo' }))
  else if (label !== undefined && pick === 4)
    say(session.send({ do: 'void-container', container: label, reason: 'torn' }))
  else if (label !== undefined) say(session.send({ do: 'open-container', kind: 'bag', no: label }))
}

function say(outcome: ReturnType<Session['send']>): void {
  if (outcome.kind === 'not-recorded') throw outcome.error
  writeSync(1, `${JSON.stringify(outcome.kind === 'recorded' ? outcome.entry : outcome.refusal.code)}\n`)
}

/** A number from 0, below the one given. */
function next(below: number): number {
  chance = (chance * 1103515245 + 12345) % 2147483648
  return Math.floor((chance / 2147483648) * below)
}
