import { told } from '../../words/told.ts'
import type { Desk } from '../desk.ts'
import type { Pending } from '../pending.ts'
import { performLine } from '../perform-line.ts'
import { type Result, wrongUse } from '../result.ts'

/** `rename JOB NAME`: another name for any job. */
export function rename(desk: Desk, [asked = '', ...name]: readonly string[]): Result | Pending {
  if (asked === '' || name.length === 0) {
    return wrongUse(
      'missing',
      told(
        'a job and its new name are needed',
        '"putback rename JOB NAME", or "putback rename step 3 TITLE"',
      ),
    )
  }
  return inJob(desk, asked, `rename job ${name.join(' ')}`)
}

/** `archive JOB` and `unarchive JOB`: puts any job away, or takes it out again. */
export function archive(
  desk: Desk,
  args: readonly string[],
  word: 'archive' | 'unarchive',
): Result | Pending {
  return inJob(desk, args.join(' '), word)
}

function inJob(desk: Desk, asked: string, line: string): Result | Pending {
  const path = desk.find(asked)
  if (typeof path !== 'string') return path
  const opened = desk.open(path)
  return opened.ok ? performLine(opened.session, line, desk.around()) : opened
}
