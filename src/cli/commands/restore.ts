import { readdirSync, realpathSync, statSync } from 'node:fs'
import { basename, resolve } from 'node:path'
import { pictureIn } from '../../storage/backup/archive-names.ts'
import { openArchive } from '../../storage/backup/read-archive.ts'
import { restoreArchive } from '../../storage/backup/restore-archive.ts'
import { pathNamed } from '../../storage/path-named.ts'
import { folderNamedText, inTheWayText, noBackupText, restoredText } from '../../words/backup.ts'
import { told } from '../../words/told.ts'
import type { Desk } from '../desk.ts'
import { archiveProgress } from '../errands/archive-progress.ts'
import { EXIT } from '../exit-codes.ts'
import { type Result, wrongUse } from '../result.ts'
import { troubleOf } from '../trouble.ts'

/** `restore FILE`: makes a job of a back-up again, in a folder of its own, and chooses it. `tell` hears how far it is. */
export async function restore(
  desk: Desk,
  args: readonly string[],
  tell: (progress: string) => void,
): Promise<Result> {
  const asked = pathNamed(args.join(' '))
  if (asked === '') {
    return wrongUse(
      'missing',
      told('no back-up is named', '"putback restore FILE": the file that "backup" made'),
    )
  }
  const file = resolve(desk.cwd, asked)
  try {
    const there = statSync(file, { throwIfNoEntry: false })
    if (!there) return wrongUse('nothing-there', noBackupText(file), EXIT.refused)
    if (there.isDirectory()) return wrongUse('folder', folderNamedText(file, archivesIn(file)), EXIT.refused)
    return await restored(desk, file, tell)
  } catch (error) {
    return troubleOf(error, file)
  }
}

/** What may be back-ups in a folder, by name; the day and time stand last in it, so the newest of a job comes first. */
function archivesIn(folder: string): string[] {
  return readdirSync(folder)
    .filter((name) => /^[^.].*\.zip$/i.test(name))
    .sort((one, other) => other.localeCompare(one, 'en', { numeric: true }))
}

async function restored(desk: Desk, file: string, tell: (progress: string) => void): Promise<Result> {
  // Whoever typed the name may have meant a link.
  const archive = await openArchive(realpathSync(file))
  try {
    const { folder, files, missing } = archive.manifest
    const made = await restoreArchive(archive, desk.shelf.home, {
      tell: archiveProgress(basename(file), tell, 'checking'),
    })
    if (made.kind === 'in-the-way') return wrongUse(made.by.why, inTheWayText(made.by, file), EXIT.refused)
    desk.shelf.choose(made.path)
    const { path, job } = made
    const pictures = files.filter(({ name }) => pictureIn(name) !== null).length
    return {
      ok: true,
      text: restoredText({ path, folder, job, pictures, missing }),
      answer: { path, job, pictures, missing },
    }
  } finally {
    archive.close()
  }
}
