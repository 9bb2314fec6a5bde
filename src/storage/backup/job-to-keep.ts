import { join } from 'node:path'
import { chunksOfFile } from '../files/file-chunks.ts'
import { errnoOf } from '../files/file-system.ts'
import { JOURNAL_LOCK_NAME, JOURNAL_NAME, readJournalBytes } from '../journal/journal-file.ts'
import { LockHeld, withLock } from '../lock/lock.ts'
import { isCopyName, PHOTOS_NAME } from '../photo-files.ts'
import { type ArchiveFileSystem, kindOf } from './archive-file-system.ts'
import { isPictureName, isSetAsideName, pictureEntry } from './archive-names.ts'
import { factsOfJournal } from './journal-facts.ts'
import type { JobInArchive, MissingPicture } from './manifest.ts'

/** A job as it is at one moment: what of it goes into an archive. */
export interface JobToKeep {
  job: JobInArchive
  files: FileToKeep[]
  /** What the record names and cannot be had. */
  missing: MissingPicture[]
}

export interface FileToKeep {
  /** In the archive. */
  name: string
  bytes: number
  mtime: Date
  isPacked: boolean
  /** The sum that the record has of a picture. */
  sha256?: string | undefined
  chunks(): Iterable<Buffer>
}

/** Looks at a job's folder and reads its journal. Throws LockHeld, or the system's error where there is no journal to read. */
export function jobToKeep(folder: string, fs: ArchiveFileSystem): JobToKeep {
  const { bytes, mtimeMs } = readJournal(folder, fs)
  const { job, pictures } = factsOfJournal(bytes)
  const journal: FileToKeep = {
    name: JOURNAL_NAME,
    bytes: bytes.length,
    mtime: new Date(mtimeMs),
    // Only a whole one packs as journals do: where a disk left nothing but zeros, it would look like a trap.
    isPacked: job.hurt === null,
    chunks: () => (bytes.length === 0 ? [] : [bytes]),
  }
  const aside = filesIn(fs, folder).filter(isSetAsideName)
  // A link in the place of the folder leads out of the job: what lies behind it is none of its pictures.
  const hasPhotos = kindOf(fs, join(folder, PHOTOS_NAME)) === 'folder'
  const missing: MissingPicture[] = []
  const kept = pictureNames(folder, { pictures, isHurt: job.hurt !== null, fs }).flatMap((name) => {
    const at = { path: join(folder, PHOTOS_NAME, name), name: pictureEntry(name) }
    const file = !isPictureName(name) ? 'name' : hasPhotos ? fileToKeep(fs, at) : 'gone'
    if (typeof file !== 'string') return [{ ...file, sha256: pictures.get(name) }]
    missing.push({ name: pictureEntry(name), why: file })
    return []
  })
  const asideKept = aside.map((name) => fileToKeep(fs, { path: join(folder, name), name }))
  return {
    job,
    files: [journal, ...asideKept.filter((file) => typeof file !== 'string'), ...kept],
    missing,
  }
}

/** Under the lock, so that no line is half written. Where no lock can be made nobody can write either. */
function readJournal(folder: string, fs: ArchiveFileSystem): ReturnType<typeof readJournalBytes> {
  const read = () => readJournalBytes(join(folder, JOURNAL_NAME), fs)
  try {
    return withLock(join(folder, JOURNAL_LOCK_NAME), { fs }, read)
  } catch (error) {
    if (error instanceof LockHeld || errnoOf(error) === undefined) throw error
    return read()
  }
}

/** The pictures that the record names; where it is hurt it may name fewer than it did, so every copy that lies there. */
function pictureNames(
  folder: string,
  { pictures, isHurt, fs }: { pictures: ReadonlyMap<string, string>; isHurt: boolean; fs: ArchiveFileSystem },
): string[] {
  const copies = isHurt ? filesIn(fs, join(folder, PHOTOS_NAME)).filter(isCopyName) : []
  return [...new Set([...pictures.keys(), ...copies])].sort()
}

/** The plain files of a folder; none where there is no such folder. */
function filesIn(fs: ArchiveFileSystem, folder: string): string[] {
  if (kindOf(fs, folder) !== 'folder') return []
  return fs.readdirSync(folder).filter((name) => kindOf(fs, join(folder, name)) === 'file')
}

/** A file on the disk; in a word why not, where it cannot be had. */
function fileToKeep(
  fs: ArchiveFileSystem,
  { path, name }: { path: string; name: string },
): FileToKeep | string {
  try {
    const stat = fs.lstatSync(path)
    if (!stat.isFile()) return 'gone'
    const { size, mtimeMs } = stat
    const chunks = () => chunksOfFile(fs, path, size)
    return { name, bytes: size, mtime: new Date(mtimeMs), isPacked: false, chunks }
  } catch (error) {
    const errno = errnoOf(error)
    if (errno === undefined) throw error
    return errno === 'ENOENT' || errno === 'ENOTDIR' ? 'gone' : errno
  }
}
