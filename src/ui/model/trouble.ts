import { NoFirstEntry, NumbersUsedUp } from '../../session/jobs.ts'
import type { Session } from '../../session/session.ts'
import { troubleText } from '../../words/storage-troubles.ts'
import type { Told } from '../../words/told.ts'
import { troubleOfError, troubleOfRecord } from '../../words/trouble-of.ts'

/**
 * An error of the disk or the lock, in words; null for any other, which is a defect of ours. `path` is what was being
 * worked on, for an error that does not say.
 */
export function errorTold(error: unknown, path: string): Told | null {
  if (error instanceof NumbersUsedUp) {
    return {
      what: 'Every job number from 1 to 999 is taken here.',
      lines: [],
      cure: 'Keep the next job in another folder.',
    }
  }
  // Parts of the program are loaded when they are asked for; an update takes away those of the one before.
  if (isModuleGone(error)) {
    return {
      what: 'putback was installed anew while it was open, and this part of the old one is gone.',
      lines: [],
      cure: 'Leave it and open it again; everything recorded stays recorded.',
    }
  }
  const trouble = error instanceof NoFirstEntry ? troubleOfRecord(error.session) : troubleOfError(error, path)
  return trouble && troubleText(trouble)
}

function isModuleGone(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'ERR_MODULE_NOT_FOUND'
}

/** What is wrong with the record of an open job, or what was set aside from it; null when all is well. */
export function recordTold(session: Session): Told | null {
  const trouble = troubleOfRecord(session)
  if (trouble) return troubleText(trouble)
  const torn = session.store.setAside.at(-1)
  return torn ? troubleText({ kind: 'set-aside', path: torn.path, bytes: torn.bytes }) : null
}
