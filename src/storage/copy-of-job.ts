import { mkdtempSync, realpathSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, dirname, join, resolve } from 'node:path'
import { openArchive } from './backup/read-archive.ts'
import {
  errnoOf,
  type FileSystem,
  nodeFileSystem,
  readBytes,
  removeQuietly,
  syncFolder,
  withFile,
} from './files/file-system.ts'
import { writeNew } from './files/write-new.ts'
import { JOURNAL_NAME, readJournalBytes } from './journal/journal-file.ts'
import { notRecorded } from './journal/not-recorded.ts'
import { photoFile } from './photo-files.ts'

/** A copy of a job, only looked at: its folder, its journal alone, or an archive of it. */
export interface CopyOfJob {
  /** Where it lies, as an absolute path. */
  path: string
  /** Its journal as it was when it was opened. */
  journal: Buffer
  /**
   * Hands the file of one of its pictures to `work`, for as long as that takes. Null where it has none of that name. Throws
   * what `work` throws, BadArchive, or the system's error.
   */
  withPicture<T>(name: string, work: (path: string) => T): Promise<T | null>
  close(): void
}

/**
 * Why there is no copy to look at:
 * - nothing-there: nothing has that path
 * - no-journal: a folder without a journal in it
 * - itself: it is the journal that it is to be brought together with
 */
export class NoCopy extends Error {
  override readonly name = 'NoCopy'
  readonly code: 'nothing-there' | 'no-journal' | 'itself'
  readonly path: string
  constructor(code: NoCopy['code'], path: string) {
    super(`${path}: ${code}`)
    this.code = code
    this.path = path
  }
}

/**
 * Opens the copy of a job that somebody named: by a path, from `cwd`; or by the name of its folder among the jobs of a home.
 * Throws what `openCopy` throws.
 * @param ownJournal the path of the journal that it is a copy of
 */
export async function openCopyNamed(
  named: string,
  ownJournal: string,
  { home, cwd }: { home: string; cwd: string },
): Promise<CopyOfJob> {
  try {
    return await openCopy(resolve(cwd, named), ownJournal)
  } catch (error) {
    const isNowhere = error instanceof NoCopy && error.code === 'nothing-there'
    if (!isNowhere || basename(named) !== named) throw error
    return openCopy(join(home, named), ownJournal)
  }
}

/**
 * Opens a copy of a job. The path itself may lead through links, for somebody typed it; what lies in its folder may not be
 * one. Throws NoCopy, BadArchive, or the system's error, EOVERFLOW where the journal is longer than any.
 */
async function openCopy(path: string, ownJournal: string): Promise<CopyOfJob> {
  const real = realPath(path)
  const isFolder = statSync(real).isDirectory()
  const file = isFolder ? join(real, JOURNAL_NAME) : real
  if (isFolder && !exists(file)) throw new NoCopy('no-journal', path)
  if (isSameFile(file, ownJournal)) throw new NoCopy('itself', path)
  if (!isFolder && isArchive(file)) return copyInArchive(file)
  const folder = dirname(file)
  return {
    path: isFolder ? folder : file,
    journal: readJournalBytes(file).bytes,
    withPicture: async (name, work) => {
      const picture = photoFile(folder, name)
      return picture === null ? null : work(picture)
    },
    close: () => undefined,
  }
}

/**
 * Keeps the journal of a copy beside the own one, as `journal.merged-<n>`: what is left out of it is not lost. Answers its
 * path; throws NotRecorded.
 */
export function keepJournal(jobFolder: string, journal: Uint8Array, fs: FileSystem = nodeFileSystem): string {
  const start = join(jobFolder, 'journal.merged-')
  try {
    const kept = writeNew(fs, start, journal)
    syncFolder(fs, jobFolder)
    return kept
  } catch (error) {
    throw notRecorded(error, `${start}1`)
  }
}

/** Removes a journal that was kept for a merge that did not come about. */
export function discardKept(path: string, fs: FileSystem = nodeFileSystem): void {
  removeQuietly(fs, path)
}

async function copyInArchive(path: string): Promise<CopyOfJob> {
  const archive = await openArchive(path)
  try {
    return {
      path,
      journal: await archive.journal(),
      withPicture: async (name, work) => {
        if (!archive.pictures.includes(name)) return null
        const folder = mkdtempSync(join(tmpdir(), 'putback-'))
        try {
          const copy = join(folder, 'picture')
          await archive.copyPictureOut(name, copy)
          return work(copy)
        } finally {
          rmSync(folder, { recursive: true, force: true })
        }
      },
      close: () => archive.close(),
    }
  } catch (error) {
    archive.close()
    throw error
  }
}

function isArchive(path: string): boolean {
  const start = withFile(nodeFileSystem, path, 'r', (fd) => readBytes(nodeFileSystem, fd, 0, 4))
  return start.equals(ZIP_START)
}

/** How the first file in a ZIP file begins: APPNOTE.TXT 4.3.7, the signature of a local file header. */
const ZIP_START = Buffer.from([0x50, 0x4b, 0x03, 0x04])

function realPath(path: string): string {
  try {
    return realpathSync(resolve(path))
  } catch (error) {
    if (isNowhere(error)) throw new NoCopy('nothing-there', path)
    throw error
  }
}

function exists(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false }) !== undefined
}

function isSameFile(path: string, other: string): boolean {
  const [one, two] = [path, other].map((each) => statSync(each, { bigint: true, throwIfNoEntry: false }))
  return one !== undefined && two !== undefined && one.ino === two.ino && one.dev === two.dev
}

function isNowhere(error: unknown): boolean {
  return ['ENOENT', 'ENOTDIR'].includes(errnoOf(error) ?? '')
}
