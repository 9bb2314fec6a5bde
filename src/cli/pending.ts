import type { Errand } from '../lines/errand.ts'
import type { ErrandOutcome } from '../session/errands.ts'
import type { Session } from '../session/session.ts'
import { EXIT } from './exit-codes.ts'
import type { Result } from './result.ts'

/** A line that takes its time: it was read, and is still to be done. */
export interface Pending {
  errand: Errand
  session: Session
}

/** Whether a line is still to be done. */
export function isPending(done: Result | Pending): done is Pending {
  return 'errand' in done
}

/** What came of an errand, as what comes of any command. */
export function resultOf(outcome: ErrandOutcome): Result {
  if (outcome.ok) return outcome
  const { exit, code, told, entries, text = [], facts } = outcome
  const failure = { code, told, entries, text, ...(facts && { facts }) }
  return { ok: false, exit: exit === 'refused' ? EXIT.refused : EXIT.notRecorded, ...failure }
}
