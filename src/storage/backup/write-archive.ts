import { createHash } from 'node:crypto'
import { basename, dirname, join } from 'node:path'
import type { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { isDeepStrictEqual } from 'node:util'
import { ZipFile } from 'yazl'
import { closeQuietly, errnoOf, removeQuietly, syncFolder } from '../files/file-system.ts'
import { putInPlace } from '../files/put-in-place.ts'
import { type ArchiveFileSystem, kindOf, nodeArchiveFileSystem } from './archive-file-system.ts'
import { MANIFEST_NAME } from './archive-names.ts'
import { BadArchive } from './bad-archive.ts'
import { archiveStem, draftName, removeDeadDrafts, removeDraft } from './draft-names.ts'
import { streamOf, writeStream } from './file-streams.ts'
import { type FileToKeep, type JobToKeep, jobToKeep } from './job-to-keep.ts'
import { type FileInArchive, type Manifest, manifestOf, writeManifest } from './manifest.ts'
import { type ArchiveProgress, openArchive } from './read-archive.ts'

/** Where an archive goes: into a folder, under a name of its own; or under the name of a file that is not there yet. */
export type ArchiveTarget = { folder: string } | { file: string }

export interface WriteOptions {
  now: Date
  /** The version of the program. */
  program: string
  tell?: ((progress: ArchiveProgress) => void) | undefined
  fs?: ArchiveFileSystem | undefined
}

/** An archive that was made and read back. */
export interface ArchiveMade {
  path: string
  bytes: number
  manifest: Manifest
}

/** The name that was asked for is taken: nothing is written over it. */
export class ArchiveExists extends Error {
  override readonly name = 'ArchiveExists'
  readonly path: string
  constructor(path: string) {
    super(`${path} is there already`)
    this.path = path
  }
}

/**
 * Puts the job in a folder, as it is at this moment, into one file; reads that back whole; and only then gives it its name.
 * What cannot be read beside the journal is left out and named. Throws ArchiveExists, LockHeld, BadArchive where the disk
 * gave back other bytes than it took, or the system's error: then nothing has the name. The job stays as it is.
 */
export async function writeArchive(
  jobFolder: string,
  target: ArchiveTarget,
  { now, program, tell = () => undefined, fs = nodeArchiveFileSystem }: WriteOptions,
): Promise<ArchiveMade> {
  if ('file' in target && kindOf(fs, target.file) !== null) throw new ArchiveExists(target.file)
  const folder = 'file' in target ? dirname(target.file) : target.folder
  removeDeadDrafts(fs, folder)
  const draft = join(folder, draftName())
  try {
    const about = { made: now.toISOString(), program, folder: basename(jobFolder) }
    const manifest = await writeDraft(draft, jobToKeep(jobFolder, fs), { fs, tell, about })
    const bytes = await readBack(draft, manifest, { fs, tell })
    const stem = archiveStem({ no: manifest.job.no, folder: about.folder }, now)
    const path = nameDraft(fs, draft, 'file' in target ? target : { folder, stem })
    keepName(fs, { draft, path })
    return { path, bytes, manifest }
  } finally {
    removeDraft(draft)
  }
}

interface Writing {
  fs: ArchiveFileSystem
  tell: (progress: ArchiveProgress) => void
  about: Pick<Manifest, 'made' | 'program' | 'folder'>
}

/** Writes the archive under a name that nobody looks for. When a file turns out not to be legible: all over, without it. */
async function writeDraft(draft: string, job: JobToKeep, writing: Writing): Promise<Manifest> {
  const { fs } = writing
  const fd = fs.openSync(draft, 'wx', 0o600)
  try {
    const manifest = await pour(fd, job, writing)
    fs.fsyncSync(fd)
    return manifest
  } catch (error) {
    if (!(error instanceof FileNotRead)) throw error
    const { file, why } = error
    removeQuietly(fs, draft)
    const files = job.files.filter((each) => each !== file)
    return await writeDraft(
      draft,
      { ...job, files, missing: [...job.missing, { name: file.name, why }] },
      writing,
    )
  } finally {
    closeQuietly(fs, fd)
  }
}

/** All files one after the other, and last the list of them, with the sums of the very bytes that were put in. */
async function pour(fd: number, { job, files, missing }: JobToKeep, writing: Writing): Promise<Manifest> {
  const { fs, tell, about } = writing
  const zip = new ZipFile()
  const out = zip.outputStream as Readable
  const stop = (error: Error) => out.destroy(error)
  zip.on('error', stop)
  let source: Readable | null = null
  const add = (name: string, options: Parameters<ZipFile['addReadStreamLazy']>[1], open: () => Readable) =>
    zip.addReadStreamLazy(name, { ...options, mode: PLAIN_FILE }, (take) => {
      source = open().on('error', stop)
      take(null, source)
    })

  const listed: FileInArchive[] = []
  for (const [index, file] of files.entries()) {
    const { name, bytes: size, mtime, isPacked: compress } = file
    add(name, { compress, size, mtime }, () => {
      tell({ doing: 'writing', file: index + 1, of: files.length, name })
      return streamOf(listing(file, listed))
    })
  }
  const list = () => manifestOf({ ...about, job, files: listed, missing })
  add(MANIFEST_NAME, { compress: true, mtime: new Date(about.made) }, () => streamOf([writeManifest(list())]))
  zip.end()
  try {
    await pipeline(out, writeStream(fs, fd))
  } finally {
    ;(source as Readable | null)?.destroy()
  }
  return list()
}

/** The bytes of a file as they go by. When all of them have, the file is on the list. */
function* listing(file: FileToKeep, listed: FileInArchive[]): Generator<Buffer> {
  const hash = createHash('sha256')
  let bytes = 0
  try {
    for (const chunk of file.chunks()) {
      hash.update(chunk)
      bytes += chunk.length
      yield chunk
    }
  } catch (error) {
    const errno = errnoOf(error)
    throw errno === undefined ? error : new FileNotRead(file, errno)
  }
  if (bytes !== file.bytes) throw new FileNotRead(file, 'short')
  const sha256 = hash.digest('hex')
  const isChanged = file.sha256 !== undefined && file.sha256 !== sha256
  listed.push({ name: file.name, bytes, sha256, ...(isChanged && { changed: true as const }) })
}

/** A file beside the journal that cannot be read to its end. */
class FileNotRead extends Error {
  readonly file: FileToKeep
  readonly why: string
  constructor(file: FileToKeep, why: string) {
    super(`${file.name} cannot be read: ${why}`)
    this.file = file
    this.why = why
  }
}

/** Reads the draft as a stranger would. Answers how long it is. */
async function readBack(
  draft: string,
  manifest: Manifest,
  { fs, tell }: Pick<Writing, 'fs' | 'tell'>,
): Promise<number> {
  const archive = await openArchive(draft, fs)
  try {
    if (!isDeepStrictEqual(archive.manifest, manifest)) throw new BadArchive('changed', draft, MANIFEST_NAME)
    const job = await archive.verify(tell)
    if (!isDeepStrictEqual(job, manifest.job)) throw new BadArchive('journal', draft)
    return fs.lstatSync(draft).size
  } finally {
    archive.close()
  }
}

/** Gives the draft the name that was asked for, or the first that is free: `...-1705.zip`, `...-1705-2.zip`. */
function nameDraft(
  fs: ArchiveFileSystem,
  draft: string,
  named: { file: string } | { folder: string; stem: string },
): string {
  if ('file' in named) {
    if (!putInPlace(fs, draft, named.file)) throw new ArchiveExists(named.file)
    return named.file
  }
  for (let number = 1; ; number += 1) {
    const path = join(named.folder, `${named.stem}${number === 1 ? '' : `-${number}`}.zip`)
    if (putInPlace(fs, draft, path)) return path
    if (number === MOST_ALIKE) throw new ArchiveExists(path)
  }
}

/** Makes the name durable. One that may be gone after a loss of power is no back-up, so it goes at once. */
function keepName(fs: ArchiveFileSystem, { draft, path }: { draft: string; path: string }): void {
  removeQuietly(fs, draft)
  try {
    syncFolder(fs, dirname(path))
  } catch (error) {
    removeQuietly(fs, path)
    throw error
  }
}

const PLAIN_FILE = 0o100600
const MOST_ALIKE = 10_000
