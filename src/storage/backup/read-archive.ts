import { createHash } from 'node:crypto'
import type { Readable } from 'node:stream'
import { crc32 } from 'node:zlib'
import {
  fromRandomAccessReaderPromise,
  RandomAccessReader,
  type Entry as ZipEntry,
  type ZipFile,
} from 'yauzl'
import { chunksOf } from '../files/file-chunks.ts'
import {
  closeQuietly,
  errnoOf,
  type FileSystem,
  readBytes,
  removeQuietly,
  writeAll,
} from '../files/file-system.ts'
import { JOURNAL_NAME, MOST_JOURNAL_BYTES } from '../journal/journal-file.ts'
import { type ArchiveFileSystem, nodeArchiveFileSystem } from './archive-file-system.ts'
import { foldedName, isArchiveName, MANIFEST_NAME, pictureEntry, pictureIn } from './archive-names.ts'
import { BadArchive } from './bad-archive.ts'
import { streamOf } from './file-streams.ts'
import { factsOfJournal } from './journal-facts.ts'
import { type JobInArchive, type Manifest, readManifest } from './manifest.ts'

/** An open archive. Its list of files was read and agrees with what is there; the bytes are proven as they are read. */
export interface Archive {
  readonly path: string
  readonly manifest: Manifest
  /** The names that the pictures in it have in the job. */
  readonly pictures: readonly string[]
  /** The bytes of the journal, as they were put in. Throws BadArchive. */
  journal(): Promise<Buffer>
  /**
   * Reads all of it. Answers the job as its journal tells it now. `tell` hears of each file. Throws BadArchive at the
   * first byte that is not what was put in.
   */
  verify(tell?: (progress: ArchiveProgress) => void): Promise<JobInArchive>
  /**
   * Writes a file of it, by its name in the archive, into a new file for this user only, flushed; its name is durable when the
   * folder is flushed. Throws BadArchive or the system's error, with nothing left at `to`.
   */
  copyOut(file: string, to: string): Promise<void>
  /** The same for a picture, by the name that it has in the job. */
  copyPictureOut(picture: string, to: string): Promise<void>
  close(): void
}

/** How far it is: which of how many files. */
export interface ArchiveProgress {
  doing: 'writing' | 'reading'
  file: number
  of: number
  name: string
}

/** A file of it other than a picture, in bytes. */
const MOST_FILE_BYTES = 1024 * 1024 * 1024
/** The list of files is held in memory whole, and takes more there than in the archive. */
const MOST_LIST_BYTES = 8 * 1024 * 1024
/** It may be as long as there are files to list, and name some tens of thousands that are missing. */
const LISTED_BYTES = 1024
const LIST_OF_MISSING_BYTES = 2 * 1024 * 1024
const MOST_FILES = 50_000
/** No journal packs better: each line has an id and a checksum of its own. */
const MOST_PACKED = 200
const TOO_SMALL_TO_ASK = 1024 * 1024

/**
 * Opens an archive to be read, and reads what it says of itself. Throws BadArchive for anything that this program would not
 * have written, or the system's error.
 */
export async function openArchive(
  path: string,
  fs: ArchiveFileSystem = nodeArchiveFileSystem,
): Promise<Archive> {
  const fd = fs.openSync(path, 'r')
  try {
    const { size } = fs.fstatSync(fd)
    const zip = await opened(path, fs, fd, size)
    const entries = await entriesOf(zip, path, size)
    const listed = entries.get(MANIFEST_NAME)
    if (!listed) throw new BadArchive('foreign', path)
    if (listed.zip.uncompressedSize > LIST_OF_MISSING_BYTES + LISTED_BYTES * entries.size)
      throw new BadArchive('too-large', path, MANIFEST_NAME)
    const manifest = readManifest(await bytesOf(zip, listed, path), path)
    return new OpenArchive(path, manifest, agreeing(manifest, entries, path), { zip, fs, fd })
  } catch (error) {
    closeQuietly(fs, fd)
    throw error
  }
}

class OpenArchive implements Archive {
  readonly path: string
  readonly manifest: Manifest
  readonly #files: Map<string, Proven>
  readonly #open: { zip: ZipFile; fs: ArchiveFileSystem; fd: number }

  constructor(
    path: string,
    manifest: Manifest,
    files: Map<string, Proven>,
    open: { zip: ZipFile; fs: ArchiveFileSystem; fd: number },
  ) {
    this.path = path
    this.manifest = manifest
    this.#files = files
    this.#open = open
  }

  get pictures(): string[] {
    return this.manifest.files.map(({ name }) => pictureIn(name)).filter((name) => name !== null)
  }

  async journal(): Promise<Buffer> {
    const chunks: Buffer[] = []
    await this.#read(JOURNAL_NAME, (chunk) => chunks.push(chunk))
    return Buffer.concat(chunks)
  }

  async verify(tell: (progress: ArchiveProgress) => void = () => undefined): Promise<JobInArchive> {
    const { files, job } = this.manifest
    for (const [index, { name }] of files.entries()) {
      tell({ doing: 'reading', file: index + 1, of: files.length, name })
      if (name !== JOURNAL_NAME) await this.#read(name, () => undefined)
    }
    const facts = factsOfJournal(await this.journal()).job
    const isOther = facts.id !== null && (facts.id !== job.id || facts.no !== job.no)
    if (isOther) throw new BadArchive('journal', this.path, JOURNAL_NAME)
    return facts
  }

  async copyOut(file: string, to: string): Promise<void> {
    const { fs } = this.#open
    const fd = fs.openSync(to, 'wx', 0o600)
    try {
      await this.#read(file, (chunk) => writeAll(fs, fd, chunk))
      fs.fsyncSync(fd)
    } catch (error) {
      removeQuietly(fs, to)
      throw error
    } finally {
      closeQuietly(fs, fd)
    }
  }

  copyPictureOut(picture: string, to: string): Promise<void> {
    return this.copyOut(pictureEntry(picture), to)
  }

  close(): void {
    closeQuietly(this.#open.fs, this.#open.fd)
  }

  async #read(file: string, take: (chunk: Buffer) => void): Promise<void> {
    const proven = this.#files.get(file)
    if (!proven) throw new BadArchive('missing', this.path, file)
    const hash = createHash('sha256')
    await readEntry(this.#open.zip, proven.entry, this.path, (chunk) => {
      hash.update(chunk)
      take(chunk)
    })
    if (hash.digest('hex') !== proven.sha256) throw new BadArchive('changed', this.path, file)
  }
}

/** A file in the archive, and the sum that its bytes must have. */
interface Proven {
  entry: NamedEntry
  sha256: string
}

interface NamedEntry {
  name: string
  zip: ZipEntry
}

async function opened(path: string, fs: FileSystem, fd: number, size: number): Promise<ZipFile> {
  try {
    const zip = await fromRandomAccessReaderPromise(new FileReader(fs, fd), size, {
      autoClose: false,
      // Names are judged as the bytes that they are.
      decodeStrings: false,
      validateEntrySizes: true,
    })
    zip.on('error', () => undefined)
    return zip
  } catch (error) {
    const errno = errnoOf(error)
    if (errno !== undefined && errno !== 'EISDIR') throw error
    throw new BadArchive('not-an-archive', path, null, error)
  }
}

/** Every file of the archive by its name, each of them such as this program writes it. */
async function entriesOf(zip: ZipFile, path: string, size: number): Promise<Map<string, NamedEntry>> {
  if (zip.entryCount > MOST_FILES) throw new BadArchive('too-large', path)
  const entries = new Map<string, NamedEntry>()
  const folded = new Set<string>()
  let packed = 0
  try {
    for await (const entry of zip.eachEntry()) {
      const name = nameOf(entry, path)
      checkEntry(entry, name, path)
      packed += entry.compressedSize
      // Files that lie over each other would be a way to make much out of little.
      if (packed > size) throw new BadArchive('packed', path, name)
      if (folded.has(foldedName(name))) throw new BadArchive('twice', path, name)
      folded.add(foldedName(name))
      entries.set(name, { name, zip: entry })
    }
  } catch (error) {
    throw error instanceof BadArchive || errnoOf(error) !== undefined
      ? error
      : new BadArchive('not-an-archive', path, null, error)
  }
  return entries
}

function checkEntry(entry: ZipEntry, name: string, path: string): void {
  const bad = (code: ConstructorParameters<typeof BadArchive>[0]) => new BadArchive(code, path, name)
  if (isLinkOrFolder(entry) || name.endsWith('/')) throw bad('link')
  if (!isArchiveName(name)) throw bad('name')
  if (entry.isEncrypted()) throw bad('encrypted')
  const isStored = entry.compressionMethod === STORED
  const isPicture = pictureIn(name) !== null
  if (!isStored && (isPicture || entry.compressionMethod !== DEFLATED)) throw bad('packed')
  if (!isPicture && entry.uncompressedSize > mostBytesOf(name)) throw bad('too-large')
  const isLarge = entry.uncompressedSize > TOO_SMALL_TO_ASK
  if (isLarge && entry.uncompressedSize > entry.compressedSize * MOST_PACKED) throw bad('packed')
}

function mostBytesOf(name: string): number {
  if (name === MANIFEST_NAME) return MOST_LIST_BYTES
  return name === JOURNAL_NAME ? MOST_JOURNAL_BYTES : MOST_FILE_BYTES
}

function nameOf({ fileNameRaw }: ZipEntry, path: string): string {
  const name = fileNameRaw.toString('utf8')
  if (!Buffer.from(name).equals(fileNameRaw)) throw new BadArchive('name', path, name)
  return name
}

/** The upper half of the attributes is the mode of the file where a system of that kind wrote them. */
function isLinkOrFolder({ externalFileAttributes, versionMadeBy }: ZipEntry): boolean {
  const kind = (externalFileAttributes >>> 16) & KIND_OF_FILE
  const isFolder = (externalFileAttributes & DOS_FOLDER) !== 0
  return isFolder || (versionMadeBy >>> 8 === UNIX && kind !== 0 && kind !== PLAIN_FILE)
}

/** Each file that the list names is there with its length, and no other. */
function agreeing(
  { files }: Manifest,
  entries: ReadonlyMap<string, NamedEntry>,
  path: string,
): Map<string, Proven> {
  const agreed = new Map<string, Proven>()
  for (const { name, bytes, sha256 } of files) {
    const entry = entries.get(name)
    if (!entry || name === MANIFEST_NAME) throw new BadArchive('missing', path, name)
    if (agreed.has(name)) throw new BadArchive('twice', path, name)
    if (entry.zip.uncompressedSize !== bytes) throw new BadArchive('changed', path, name)
    agreed.set(name, { entry, sha256 })
  }
  if (!agreed.has(JOURNAL_NAME)) throw new BadArchive('missing', path, JOURNAL_NAME)
  for (const name of entries.keys())
    if (name !== MANIFEST_NAME && !agreed.has(name)) throw new BadArchive('not-listed', path, name)
  return agreed
}

async function bytesOf(zip: ZipFile, entry: NamedEntry, path: string): Promise<Buffer> {
  const chunks: Buffer[] = []
  await readEntry(zip, entry, path, (chunk) => chunks.push(chunk))
  return Buffer.concat(chunks)
}

/** Hands on the bytes of a file, no more than its length; its length and its checksum are proven at the end. */
async function readEntry(
  zip: ZipFile,
  { name, zip: entry }: NamedEntry,
  path: string,
  take: (chunk: Buffer) => void,
): Promise<void> {
  let [sum, length] = [0, 0]
  try {
    const stream: Readable = await zip.openReadStreamPromise(entry)
    for await (const chunk of stream as AsyncIterable<Buffer>) {
      sum = crc32(chunk, sum)
      length += chunk.length
      take(chunk)
    }
  } catch (error) {
    throw errnoOf(error) === undefined ? new BadArchive('changed', path, name, error) : error
  }
  if (sum !== entry.crc32 || length !== entry.uncompressedSize) throw new BadArchive('changed', path, name)
}

/** How the reader of archives asks for bytes. */
class FileReader extends RandomAccessReader {
  readonly #fs: FileSystem
  readonly #fd: number

  constructor(fs: FileSystem, fd: number) {
    super()
    this.#fs = fs
    this.#fd = fd
  }

  override createReadStream(range: { start: number; end: number }): Readable {
    return streamOf(chunksOf(this.#fs, this.#fd, range))
  }

  override read(
    buffer: Buffer,
    offset: number,
    length: number,
    position: number,
    done: (error: Error | null, count?: number) => void,
  ): void {
    let bytes: Buffer
    try {
      bytes = readBytes(this.#fs, this.#fd, position, position + length)
    } catch (error) {
      done(error as Error)
      return
    }
    done(null, bytes.copy(buffer, offset))
  }

  /** The file is closed by whoever opened it. */
  override close(done: (error: Error | null) => void): void {
    done(null)
  }
}

// By the specification of the format (APPNOTE 4.4.5, 4.4.2) and of the modes of files (POSIX sys/stat.h).
const STORED = 0
const DEFLATED = 8
const UNIX = 3
const KIND_OF_FILE = 0o170000
const PLAIN_FILE = 0o100000
const DOS_FOLDER = 0x10
