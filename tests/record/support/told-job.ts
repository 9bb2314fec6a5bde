import type { Command } from '../../../src/journal/command.ts'
import { parseEntry } from '../../../src/journal/entry.ts'
import { readLine } from '../../../src/lines/read-line.ts'
import { Session } from '../../../src/session/session.ts'
import { openJournal } from '../../../src/storage/journal/open-journal.ts'
import { temporaryFolder } from '../../storage/support/temporary-folder.ts'
import { openJob } from '../../support/record.ts'

/** A job told in lines or commands, `Kim: ` before a line for who says it, a minute after each other. */
export function toldJob(...told: (string | Command)[]): Session {
  const folder = temporaryFolder()
  let minute = 0
  const now = () => new Date(Date.UTC(2030, 0, 1, 8, minute))
  const open = (by?: string) => new Session(openJournal(folder, { parse: parseEntry }), { now, by })
  for (const each of [openJob, ...told]) {
    const [, by, rest] = typeof each === 'string' ? (/^(Kim|Ola): (.*)$/.exec(each) ?? []) : []
    const session = open(by)
    for (const command of typeof each === 'string' ? commandsOf(rest ?? each, session) : [each]) {
      const outcome = session.send(command)
      if (outcome.kind !== 'recorded') throw new Error(`${JSON.stringify(each)}: ${JSON.stringify(outcome)}`)
    }
    minute += 1
  }
  return open()
}

function commandsOf(line: string, { state }: Session): Command[] {
  const reading = readLine(line, state)
  if (reading.kind !== 'commands') throw new Error(`not commands: ${line}: ${JSON.stringify(reading)}`)
  return reading.commands
}
