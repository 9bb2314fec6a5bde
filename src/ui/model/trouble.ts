import { type JobProblem, NumbersUsedUp } from '../../session/jobs.ts'
import type { Session } from '../../session/session.ts'
import { type Trouble, troubleText } from '../../words/storage-troubles.ts'
import type { Told } from '../../words/told.ts'

/** An error of the disk or the lock, in words; null for any other, which is a defect of ours. */
export function errorTold(error: unknown): Told | null {
  if (!(error instanceof Error)) return null
  if (error instanceof NumbersUsedUp) {
    return {
      what: 'Every job number from 1 to 999 is taken here.',
      lines: [],
      cure: 'Keep the next job in another folder.',
    }
  }
  const trouble = troubleOf(error)
  return trouble && troubleText(trouble)
}

/** What is wrong with the record of an open job, or null. */
export function recordTold(session: Session): Told | null {
  const { store, unlawful } = session
  if (store.problem) return problemTold(store.problem, store.path)
  if (unlawful) return problemTold({ kind: 'law', entry: unlawful.n }, store.path)
  const torn = store.setAside.at(-1)
  return torn ? troubleText({ kind: 'set-aside', path: torn.path, bytes: torn.bytes }) : null
}

/** What is wrong with the record of a job in the list. */
export function problemTold(problem: JobProblem, path: string): Told {
  return troubleText(problemTrouble(problem, path))
}

function problemTrouble(problem: JobProblem, path: string): Trouble {
  switch (problem.kind) {
    case 'damaged':
      return { kind: 'damaged', path, line: problem.line, why: problem.why }
    case 'law':
      // Entry and line have the same number: one entry, one line.
      return { kind: 'damaged', path, line: problem.entry, why: 'law' }
    case 'torn':
      return { kind: 'not-recorded', path, code: 'torn', takenBack: true }
    case 'replaced':
      return { kind: 'replaced', path }
    case 'empty':
      return { kind: 'empty', path }
    case 'unreadable':
      return { kind: 'unreadable', path, code: problem.code }
    default:
      return problem satisfies never
  }
}

interface StorageFacts {
  path?: unknown
  code?: unknown
  takenBack?: unknown
  pid?: unknown
  host?: unknown
  since?: unknown
  elsewhere?: unknown
}

/** The storage's errors are told by their names: this folder knows no file and imports none of them. */
function troubleOf(error: Error): Trouble | null {
  const facts: StorageFacts = Object.fromEntries(Object.entries(error))
  const path = text(facts.path)
  if (error.name === 'NotRecorded') {
    return { kind: 'not-recorded', path, code: text(facts.code), takenBack: facts.takenBack !== false }
  }
  if (error.name === 'LockHeld') {
    const pid = facts.pid
    return {
      kind: 'lock-held',
      path,
      pid: typeof pid === 'number' ? pid : null,
      host: textOrNull(facts.host),
      since: textOrNull(facts.since),
      elsewhere: facts.elsewhere === true,
    }
  }
  return typeof facts.code === 'string' ? { kind: 'unreadable', path, code: facts.code } : null
}

function text(value: unknown): string {
  return typeof value === 'string' ? value : ''
}

function textOrNull(value: unknown): string | null {
  return typeof value === 'string' ? value : null
}
