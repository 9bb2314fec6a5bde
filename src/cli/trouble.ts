import type { JobProblem } from '../session/jobs.ts'
import type { Session } from '../session/session.ts'
import { LockHeld } from '../storage/lock.ts'
import { NotRecorded } from '../storage/not-recorded.ts'
import { type Trouble, troubleText } from '../words/storage-troubles.ts'
import { EXIT } from './exit-codes.ts'
import type { Failure } from './result.ts'

/** An error of the disk or the lock as a failure; any other error is a fault of ours and goes on. */
export function troubleOf(error: unknown, path: string): Failure {
  const trouble = troubleFrom(error, path)
  if (trouble === null) throw error
  return {
    ok: false,
    exit: EXIT.notRecorded,
    code: codeOf(trouble),
    told: troubleText(trouble),
    facts: { trouble },
  }
}

/** What is wrong with the record of an open job; null when nothing is. */
export function problemOf({ store, unlawful }: Session): Trouble | null {
  const problem: JobProblem | null = store.problem ?? (unlawful ? { kind: 'law', entry: unlawful.n } : null)
  return problem && troubleOfProblem(problem, store.path)
}

/** A problem of a record in the words' terms. */
export function troubleOfProblem(problem: JobProblem, path: string): Trouble {
  switch (problem.kind) {
    case 'torn':
      return { kind: 'not-recorded', path, code: 'torn', takenBack: true }
    case 'damaged':
      return { kind: 'damaged', path, line: problem.line, why: problem.why }
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

function troubleFrom(error: unknown, path: string): Trouble | null {
  if (error instanceof LockHeld) {
    const { pid, host, since, elsewhere } = error
    return { kind: 'lock-held', path: error.path, pid, host, since, elsewhere }
  }
  if (error instanceof NotRecorded) {
    return { kind: 'not-recorded', path: error.path, code: error.code, takenBack: error.takenBack }
  }
  if (error instanceof Error && error.name === 'UnlawfulEntry' && 'n' in error) {
    return { kind: 'damaged', path, line: Number(error.n), why: 'law' }
  }
  const code =
    error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : undefined
  return code === undefined || !/^E[A-Z0-9]+$/.test(code) ? null : { kind: 'unreadable', path, code }
}

function codeOf(trouble: Trouble): string {
  return 'code' in trouble ? trouble.code : trouble.kind
}
