import { dirname } from 'node:path'
import type { Errand } from '../lines/errand.ts'
import type { PrintPlaces } from '../print/print.ts'
import type { ErrandOutcome, Errands } from '../session/errands.ts'
import type { Session } from '../session/session.ts'
import type { Desk } from './desk.ts'
import { type Pending, resultOf } from './pending.ts'
import type { Result } from './result.ts'
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
    return resultOf(await errandIn(errand, session, places, tell))
  } catch (error) {
    return troubleOf(error, dirname(session.store.path))
  } finally {
    tell('')
  }
}

/** The errands of the screens. */
export function errandsOf(desk: Desk): Errands {
  const places = { home: desk.shelf.home, cwd: desk.cwd, stdout: false }
  return { run: (errand, session, tell) => errandIn(errand, session, places, tell) }
}

/** What prints, tells the whole job or reads pictures is loaded when it is asked for, for all of it is heavy. */
async function errandIn(
  errand: Errand,
  session: Session,
  places: PrintPlaces,
  tell: (progress: string) => void,
): Promise<ErrandOutcome> {
  switch (errand.errand) {
    case 'print':
    case 'print-usual':
    case 'stocks': {
      const { runPrinting } = await import('../print/run-printing.ts')
      return runPrinting(errand, session, places)
    }
    case 'record': {
      const { recordAnswer } = await import('./answers/record-text.ts')
      return { ok: true, entries: [], ...recordAnswer(session) }
    }
    case 'photos-import': {
      const { importPhotos } = await import('../photos/import-photos.ts')
      return importPhotos(session, errand.folder, tell)
    }
    case 'photos-open': {
      const { openPhotos } = await import('../photos/open-pictures.ts')
      return openPhotos(session, errand.of)
    }
    default:
      return errand satisfies never
  }
}
