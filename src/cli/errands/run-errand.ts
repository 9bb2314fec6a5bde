import type { Errand } from '../../lines/errand.ts'
import { importPhotos } from '../../photos/import-photos.ts'
import { openPhotos } from '../../photos/open-pictures.ts'
import type { PrintPlaces } from '../../print/print.ts'
import { runPrinting } from '../../print/run-printing.ts'
import type { ErrandOutcome } from '../../session/errands.ts'
import type { Session } from '../../session/session.ts'
import { recordAnswer } from '../answers/record-text.ts'
import { runBackup } from './backup.ts'
import { type OpenOther, runBorrow } from './borrow.ts'
import { writeOrderList } from './buy-csv.ts'
import { runDoctorHere } from './doctor.ts'
import { runMerge } from './merge.ts'

export { doctor } from '../commands/doctor.ts'
export { restore } from '../commands/restore.ts'
// These need no job in hand, and are loaded with the errands that do.
export { backUpEvery } from './backup.ts'

/**
 * Every errand, loaded together and only when one is run: what prints, reads pictures and tells the whole job is heavy,
 * and loaded each by itself they would cut the rest of the program into more files than a start should read.
 */
export async function errandIn(
  errand: Errand,
  session: Session,
  places: PrintPlaces,
  tell: (progress: string) => void,
  openOther: OpenOther,
): Promise<ErrandOutcome> {
  switch (errand.errand) {
    case 'print':
    case 'print-usual':
    case 'stocks':
      return runPrinting(errand, session, places)
    case 'record':
      return { ok: true, entries: [], ...recordAnswer(session) }
    case 'photos-import':
      return importPhotos(session, errand.folder, tell)
    case 'photos-open':
      return openPhotos(session, errand.of)
    case 'buy-csv':
      return writeOrderList(session, errand.file, places)
    case 'borrow':
      return runBorrow(errand, session, openOther)
    case 'backup':
      return runBackup(errand, session, places, tell)
    case 'doctor':
      return runDoctorHere(errand, session, places)
    case 'merge':
      return runMerge(errand, session, places, tell)
    default:
      return errand satisfies never
  }
}
