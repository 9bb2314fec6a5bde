import { dirname } from 'node:path'
import type { Errands } from '../session/errands.ts'
import type { Desk, Open } from './desk.ts'
import { type Pending, resultOf } from './pending.ts'
import type { Failure, Result } from './result.ts'
import { troubleOf } from './trouble.ts'

/**
 * Runs an errand of the command line. `tell` hears how far it is, and an empty text at the end. `stdout` says whether
 * standard output may take a file: not where other words go to it as well.
 */
export async function runErrand(
  desk: Desk,
  { errand, session }: Pending,
  tell: (progress: string) => void,
  { stdout }: { stdout: boolean },
): Promise<Result> {
  try {
    const places = { home: desk.shelf.home, cwd: desk.cwd, stdout }
    const { errandIn } = await import('./errands/run-errand.ts')
    return resultOf(await errandIn(errand, session, places, tell, otherJobs(desk)))
  } catch (error) {
    return troubleOf(error, dirname(session.store.path))
  } finally {
    tell('')
  }
}

/** The errands of the screens. */
export function errandsOf(desk: Desk): Errands {
  const places = { home: desk.shelf.home, cwd: desk.cwd, stdout: false }
  return {
    run: async (errand, session, tell) => {
      const { errandIn } = await import('./errands/run-errand.ts')
      return errandIn(errand, session, places, tell, otherJobs(desk))
    },
  }
}

/** Another job, by its number alone: a name could be that of the job in hand. */
function otherJobs(desk: Desk): (no: number) => Open | Failure {
  return (no) => {
    const path = desk.find(String(no))
    return typeof path === 'string' ? desk.open(path) : path
  }
}
