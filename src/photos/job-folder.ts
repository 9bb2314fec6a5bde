import { dirname } from 'node:path'
import type { Session } from '../session/session.ts'

/** The folder of a job, by the path of its journal. */
export function jobFolderOf(session: Session): string {
  return dirname(session.store.path)
}
