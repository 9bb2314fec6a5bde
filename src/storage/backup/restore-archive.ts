import { dirname, join } from 'node:path'
import { parseEntry } from '../../journal/entry.ts'
import { syncFolder } from '../files/file-system.ts'
import { JOBS_LOCK_NAME, listJobs, makeHome } from '../job-folders.ts'
import { numberedSlug, slugOf } from '../job-slug.ts'
import { withLock } from '../lock/lock.ts'
import { PHOTOS_NAME } from '../photo-files.ts'
import { type ArchiveFileSystem, kindOf, nodeArchiveFileSystem } from './archive-file-system.ts'
import { draftName, removeDeadDrafts, removeDraft } from './draft-names.ts'
import type { JobInArchive } from './manifest.ts'
import type { Archive, ArchiveProgress } from './read-archive.ts'

/** A job of the home that an archive may not be restored beside: it is the same job, or has its number on its labels. */
export interface JobInTheWay {
  why: 'same-job' | 'same-number'
  path: string
  no: number
  name: string
}

export type Restored =
  | { kind: 'restored'; folder: string; path: string; job: JobInArchive }
  | { kind: 'in-the-way'; by: JobInTheWay }

/**
 * Makes a job of an archive in a home, in a folder of its own that nothing else has. All of the archive is proven first, and
 * the folder gets its name when everything in it is on the disk. Throws BadArchive, LockHeld or the system's error, with
 * nothing left behind.
 */
export async function restoreArchive(
  archive: Archive,
  home: string,
  {
    tell = () => undefined,
    fs = nodeArchiveFileSystem,
  }: { tell?: (progress: ArchiveProgress) => void; fs?: ArchiveFileSystem } = {},
): Promise<Restored> {
  // Long before the last picture is read: this is what most often stands against it.
  const before = jobInTheWay(home, archive.manifest.job)
  if (before) return { kind: 'in-the-way', by: before }
  const job = await archive.verify(tell)
  makeHome(home, fs)
  removeDeadDrafts(fs, home)
  const draft = join(home, draftName())
  try {
    fs.mkdirSync(draft, { mode: 0o700 })
    const made = join(draft, 'job')
    await copyInto(made, archive, { tell, fs })
    // Two at the same moment, or a new job, must not get the same number or the same folder.
    return withLock(join(home, JOBS_LOCK_NAME), { fs }, () => {
      const by = jobInTheWay(home, job)
      if (by) return { kind: 'in-the-way', by }
      const folder = freeFolder(fs, home, archive.manifest.folder)
      const path = join(home, folder)
      fs.renameSync(made, path)
      keepName(fs, { made, path })
      return { kind: 'restored', folder, path, job }
    })
  } finally {
    removeDraft(draft)
  }
}

/** The job of the home that the one in an archive would be mistaken for, if there is one. */
function jobInTheWay(home: string, { id, no }: JobInArchive): JobInTheWay | null {
  const jobs = listJobs(home, parseEntry).flatMap(({ path, header }) =>
    header?.type === 'opened' ? [{ path, id: header.id, no: header.job.no, name: header.job.name }] : [],
  )
  const same = jobs.find((job) => job.id === id)
  const numbered = jobs.find((job) => job.no === no)
  const { path, no: number, name } = same ?? numbered ?? {}
  if (path === undefined || number === undefined || name === undefined) return null
  return { why: same ? 'same-job' : 'same-number', path, no: number, name }
}

async function copyInto(
  folder: string,
  archive: Archive,
  { tell, fs }: { tell: (progress: ArchiveProgress) => void; fs: ArchiveFileSystem },
): Promise<void> {
  fs.mkdirSync(folder, { mode: 0o700 })
  const photos = join(folder, PHOTOS_NAME)
  if (archive.pictures.length > 0) fs.mkdirSync(photos, { mode: 0o700 })
  const { files } = archive.manifest
  for (const [index, { name }] of files.entries()) {
    tell({ doing: 'writing', file: index + 1, of: files.length, name })
    await archive.copyOut(name, join(folder, ...name.split('/')))
  }
  if (archive.pictures.length > 0) syncFolder(fs, photos)
  syncFolder(fs, folder)
}

function freeFolder(fs: ArchiveFileSystem, home: string, asked: string): string {
  const slug = slugOf(asked)
  for (let number = 1; ; number += 1) {
    const folder = number === 1 ? slug : numberedSlug(slug, number)
    if (kindOf(fs, join(home, folder)) === null) return folder
  }
}

/** A folder whose name may be gone after a loss of power goes back to the draft, and with it. */
function keepName(fs: ArchiveFileSystem, { made, path }: { made: string; path: string }): void {
  try {
    syncFolder(fs, dirname(path))
  } catch (error) {
    try {
      fs.renameSync(path, made)
    } catch {
      // It stays then: whole, and listed like any other.
    }
    throw error
  }
}
