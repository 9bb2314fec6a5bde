import { writeSync } from 'node:fs'
import { parseEntry } from '../../../src/journal/entry.ts'
import { Session } from '../../../src/session/session.ts'
import { timersOf } from '../../../src/session/timers.ts'
import { openJournal } from '../../../src/storage/journal/open-journal.ts'

// One who opens a job at a time: says what runs, then carries out commands, and says what came of each.
const [folder = '', at = '', ...commands] = process.argv.slice(2)
const now = () => new Date(at)
const session = new Session(openJournal(folder, { parse: parseEntry }), { now })

say(timersOf(session.stateNow()).map(({ kind, minutesLeft, isOver }) => ({ kind, minutesLeft, isOver })))
for (const command of commands) {
  const outcome = session.send(JSON.parse(command))
  if (outcome.kind === 'not-recorded') throw outcome.error
  say(outcome.kind === 'recorded' ? outcome.entry.type : outcome.refusal.code)
}

function say(what: unknown): void {
  writeSync(1, `${JSON.stringify(what)}\n`)
}
