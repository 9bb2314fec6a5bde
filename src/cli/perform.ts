import { nearestWord } from '../lines/nearest.ts'
import type { Session } from '../session/session.ts'
import type { Entry } from '../session/stored-entry.ts'
import { say } from '../words/cures.ts'
import { entryText } from '../words/entries.ts'
import { told } from '../words/told.ts'
import type { Options } from './arguments.ts'
import { PROGRAM_COMMANDS } from './command-table.ts'
import { help } from './commands/help.ts'
import { jobs } from './commands/jobs.ts'
import { newJob } from './commands/new-job.ts'
import { archive, rename } from './commands/rename.ts'
import { use } from './commands/use.ts'
import type { Desk } from './desk.ts'
import { isPending, type Pending } from './pending.ts'
import { performLine } from './perform-line.ts'
import type { Result } from './result.ts'

/** Carries out one command: the program's own, or a line in the job that lines go to. An errand is only read. */
export function perform(desk: Desk, words: readonly string[], options: Options): Result | Pending {
  const [first = '', ...rest] = words
  switch (first.toLowerCase()) {
    case 'new':
      if (rest[0]?.toLowerCase() === 'job') return newJob(desk, rest, options)
      break
    case 'help':
      return help(rest.length === 0 ? null : rest.join(' '))
    case 'jobs':
      return jobs(desk, rest, options)
    case 'use':
      if (rest[0]?.toLowerCase() !== 'again') return use(desk, rest)
      break
    case 'rename':
      if (!/^(?:step|job)$/i.test(rest[0] ?? '') && !renamesPiece(desk, rest)) return rename(desk, rest)
      break
    case 'archive':
    case 'unarchive':
      if (rest.length > 0) return archive(desk, rest, first.toLowerCase() as 'archive')
      break
    default:
  }
  return line(desk, words.join(' '))
}

/** `rename drain bolt to drain plug`, where no job is called by the first word. */
function renamesPiece(desk: Desk, [asked = '', ...more]: readonly string[]): boolean {
  return more.some((word) => /^to$/i.test(word)) && typeof desk.find(asked) !== 'string'
}

function line(desk: Desk, text: string): Result | Pending {
  // A record is worth most when it is hurt: one of which nothing can be read is backed up as it is.
  const open = /^backup(?: |$)/i.test(text) ? desk.anyhow() : desk.current()
  if (!open.ok) return open
  const performed = performLine(open.session, text, desk.around())
  if (isPending(performed)) return performed
  const result = open.noted ? behindNote(open.session, open.noted, performed) : performed
  return result.ok ? result : withNearCommand(result, text)
}

/** What came of a line, behind what had to be noted first. An answer stays as it is: it may be kept as a file. */
function behindNote({ state }: Session, noted: Entry, result: Result): Result {
  const isAnswer = result.ok && result.entries === undefined
  const before = isAnswer ? [] : [`${noted.n}  ${entryText(state, noted)}`]
  return {
    ...result,
    entries: [noted, ...(result.entries ?? [])],
    text: [...before, ...(result.text ?? [])],
  }
}

/** A word that no line begins with may be one of the program's own, mistyped. */
function withNearCommand(failure: Extract<Result, { ok: false }>, text: string): Result {
  const [first = '', second = ''] = text.split(' ')
  if (failure.code === 'no-such-piece' && /^new$/i.test(first)) {
    return {
      ...failure,
      told: {
        ...failure.told,
        cure: `${failure.told.cure} For a new job: ${say(`putback new job ${text.slice(4)}`)}.`,
      },
    }
  }
  if (failure.code !== 'unknown-word' || failure.told.cure.startsWith('Perhaps')) return failure
  const near = nearestWord(
    first,
    PROGRAM_COMMANDS.map(({ word }) => word.split(' ')[0] ?? ''),
  )
  return near === null || near === first.toLowerCase()
    ? failure
    : { ...failure, told: told(failure.told.what, `perhaps ${say(`${near} ${second}`.trim())}`) }
}
