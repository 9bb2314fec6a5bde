import type { Command } from '../../../src/journal/command.ts'
import { type Entry, parseEntry } from '../../../src/journal/entry.ts'
import { Session, type SessionOptions } from '../../../src/session/session.ts'
import type { FileSystem } from '../../../src/storage/files/file-system.ts'
import { openJournal } from '../../../src/storage/journal/open-journal.ts'
import { temporaryFolder } from '../../storage/support/temporary-folder.ts'
import { openJob } from '../../support/record.ts'

interface Options extends SessionOptions {
  fs?: FileSystem
  lockLimit?: number
}

/** A session on a job's folder. */
export function sessionIn(folder: string, { fs, lockLimit, ...options }: Options = {}): Session {
  return new Session(openJournal(folder, { parse: parseEntry, fs, lockLimit }), options)
}

/** Sends commands, each of which must be recorded. */
export function tell(session: Session, ...commands: Command[]): Session {
  for (const [index, command] of commands.entries()) {
    const outcome = session.send(command)
    if (outcome.kind !== 'recorded')
      throw new Error(`command ${index + 1} (${command.do}): ${JSON.stringify(outcome)}`)
  }
  return session
}

/** Job 7 in a folder of its own, with the commands carried out on it. */
export function sessionWith(...commands: Command[]): Session {
  return tell(sessionIn(temporaryFolder()), openJob, ...commands)
}

/** Writes entries as they are, whether they follow or not: checksums right, laws not asked. */
export function writeUnasked(folder: string, entries: readonly Entry[]): void {
  openJournal(folder, { parse: parseEntry }).append(() => entries)
}
