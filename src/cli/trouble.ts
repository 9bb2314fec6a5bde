import { type Trouble, troubleText } from '../words/storage-troubles.ts'
import { troubleOfError } from '../words/trouble-of.ts'
import { EXIT } from './exit-codes.ts'
import type { Failure } from './result.ts'

/** An error of the disk or the lock as a failure; any other error is a fault of ours and goes on. */
export function troubleOf(error: unknown, path: string): Failure {
  const trouble = troubleOfError(error, path)
  if (trouble === null) throw error
  return {
    ok: false,
    exit: EXIT.notRecorded,
    code: codeOf(trouble),
    told: troubleText(trouble),
    facts: { trouble },
    ...(error instanceof Error ? { cause: error } : {}),
  }
}

function codeOf(trouble: Trouble): string {
  return 'code' in trouble ? trouble.code : trouble.kind
}
