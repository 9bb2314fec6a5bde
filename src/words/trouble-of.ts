import type { JobProblem } from '../session/jobs.ts'
import type { Session } from '../session/session.ts'
import type { Trouble } from './storage-troubles.ts'

/**
 * An error of the disk, the lock or the record as trouble that can be told; null for any other, which is a fault of
 * ours. `path` is what was being worked on, for an error that does not say. Errors are told by their names, since this
 * folder imports nothing that could name their classes.
 */
export function troubleOfError(error: unknown, path: string): Trouble | null {
  if (!(error instanceof Error)) return null
  const facts: StorageFacts = Object.fromEntries(Object.entries(error))
  const at = text(facts.path) || path
  switch (error.name) {
    case 'NotRecorded':
      return {
        kind: 'not-recorded',
        path: at,
        code: text(facts.code),
        takenBack: facts.takenBack !== false,
      }
    case 'LockHeld':
      return {
        kind: 'lock-held',
        path: at,
        pid: typeof facts.pid === 'number' ? facts.pid : null,
        host: text(facts.host) || null,
        since: text(facts.since) || null,
        by: text(facts.by) || null,
        elsewhere: facts.elsewhere === true,
      }
    case 'BadArchive':
      return { kind: 'bad-archive', path: at, why: text(facts.code), file: text(facts.file) || null }
    case 'UnlawfulEntry':
      return troubleOfProblem({ kind: 'law', entry: Number(facts.n) }, at)
    default: {
      const code = text(facts.code).replace(UNNAMED, 'EUNKNOWN')
      return SYSTEM_CODE.test(code) ? { kind: 'unreadable', path: at, code } : null
    }
  }
}

/** What is wrong with the record of an open job; null when nothing is. */
export function troubleOfRecord(session: Session): Trouble | null {
  const { store, problem } = session
  if (problem) {
    const trouble = troubleOfProblem(problem, store.path)
    const job = session.state.job.no || undefined
    return trouble.kind === 'damaged' || trouble.kind === 'replaced' ? { ...trouble, job } : trouble
  }
  return session.entries().length === 0 ? { kind: 'empty', path: store.path } : null
}

/** A problem of a record as trouble that can be told. */
export function troubleOfProblem(problem: JobProblem, path: string): Trouble {
  switch (problem.kind) {
    case 'torn':
      return { kind: 'not-recorded', path, code: 'torn', takenBack: true }
    case 'damaged':
      return { kind: 'damaged', path, line: problem.line, why: problem.why }
    case 'newer':
      return { kind: 'newer', path, line: problem.line, version: problem.version, known: problem.known }
    case 'law':
      // Entry and line have the same number: one entry, one line.
      return { kind: 'damaged', path, line: problem.entry, why: 'law' }
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

/** Node calls what it has no name for `UNKNOWN` or `Unknown system error -116`; most have their names from the storage by then. */
const UNNAMED = /^(UNKNOWN|Unknown system error -?\d+)$/
const SYSTEM_CODE = /^E[A-Z0-9]+$/

interface StorageFacts {
  path?: unknown
  file?: unknown
  code?: unknown
  takenBack?: unknown
  pid?: unknown
  host?: unknown
  since?: unknown
  by?: unknown
  elsewhere?: unknown
  n?: unknown
}

function text(value: unknown): string {
  return typeof value === 'string' ? value : ''
}
