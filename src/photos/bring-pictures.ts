import type { Entry } from '../journal/entry.ts'
import { picturesIn } from '../journal/recorded-pictures.ts'
import type { Session } from '../session/session.ts'
import type { CopyOfJob } from '../storage/copy-of-job.ts'
import { isCopyName, type PhotoFileSystem, PhotoFiles, SourceChanged } from '../storage/photo-files.ts'
import { jobFolderOf } from './job-folder.ts'

/** What became of the pictures of a copy. */
export interface Brought {
  /** The names that they got here, by the SHA-256 of their bytes. */
  names: Map<string, string>
  /** The names of those whose files were missing here and came from the copy. */
  restored: string[]
  /** The names, in the copy, of those whose files it does not have, or not as they were. */
  missing: string[]
}

/**
 * Copies the files of pictures that entries of a copy add, and those of our own that are missing here. They are on the disk
 * before any entry names them. `tell` hears of each. Throws NotRecorded, BadArchive, or the system's error.
 */
export async function bringPictures(
  session: Session,
  copy: CopyOfJob,
  fits: readonly Entry[],
  { tell, fs }: { tell: (progress: string) => void; fs?: PhotoFileSystem | undefined },
): Promise<Brought> {
  const ours = picturesIn(session.entries())
  const files = new PhotoFiles(
    jobFolderOf(session),
    ours.map(({ file }) => file),
    fs,
  )
  const brought: Brought = { names: new Map(), restored: [], missing: [] }
  const added = picturesIn(fits)
  const lost = ours.filter(({ file }) => !files.has(file))
  for (const [index, { file, sha256 }] of added.entries()) {
    tell(`picture ${index + 1} of ${added.length}`)
    const [stem = '', extension = ''] = file.split('.')
    const name = await taken(copy, file, (source) => files.copyIn({ source, sha256, stem, extension }))
    if (name === null) brought.missing.push(file)
    else brought.names.set(sha256, name)
  }
  for (const { file, sha256 } of lost) {
    if (await taken(copy, file, (source) => files.restore(file, source, sha256))) brought.restored.push(file)
  }
  if (brought.names.size + brought.restored.length > 0) files.flush()
  return brought
}

/**
 * Null where the copy has no such file, or one whose bytes are not those of the picture. A name that pictures never get is
 * that of something else.
 */
async function taken<T>(copy: CopyOfJob, file: string, take: (source: string) => T): Promise<T | null> {
  if (!isCopyName(file)) return null
  try {
    return await copy.withPicture(file, take)
  } catch (error) {
    if (error instanceof SourceChanged) return null
    throw error
  }
}
