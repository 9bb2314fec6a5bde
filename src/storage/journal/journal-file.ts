import { dirname } from 'node:path'
import type { SyncAdapter } from 'lowdb'
import {
  errnoOf,
  type FileStat,
  type FileSystem,
  nodeFileSystem,
  readBytes,
  syncFolder,
  withFile,
} from '../files/file-system.ts'
import { readWhole, tooLong } from '../files/read-whole.ts'
import {
  FILE_START,
  type LineEnd,
  type LineProblem,
  type LinesRead,
  type Numbered,
  readLines,
  writeLine,
} from './line.ts'
import { NotRecorded, notRecorded } from './not-recorded.ts'

/** The name of the journal inside a job's folder. */
export const JOURNAL_NAME = 'journal.log'

/** The name of the lock beside it, which whoever writes in it holds. */
export const JOURNAL_LOCK_NAME = 'journal.lock'

/**
 * The longest journal that is read or written, in bytes: a job of ten thousand entries takes a few million. All of it is held in
 * memory, so a longer file would end the program instead of being told.
 */
export const MOST_JOURNAL_BYTES = 128 * 1024 * 1024

export interface Journal<E> {
  entries: E[]
}

/** Replaced: what was read before is no longer in the file, so nothing can be said about what follows. */
export type JournalProblem = LineProblem | { kind: 'replaced' }

export interface JournalFileOptions<E> {
  /** Throws on a shape it does not accept. */
  parse: (raw: unknown) => E
  fs?: FileSystem | undefined
  /** The longest file that is read or written, in bytes. */
  most?: number | undefined
}

/** lowdb's adapter for one journal. Writing asks for the lock; reading does not. */
export interface JournalFile<E> extends SyncAdapter<Journal<E>> {
  readonly path: string
  /** Found by the last read. A torn end seen without the lock may be a line that is being written. */
  readonly problem: JournalProblem | null
  /** The bytes read and found good, from the start of the file. */
  readonly goodBytes: number
  /** Changes whenever the file does; compare with `stampOf` the file now. */
  readonly stamp: string
  /**
   * Reads what was added since the last read and returns the same journal, extended. A missing file is an empty
   * journal. Throws the system's error when the file cannot be read, EOVERFLOW when it is too long.
   */
  read(): Journal<E>
  /**
   * Appends the entries that the file does not have yet: one write, one sync. Throws NotRecorded, with the journal
   * back as it was, when that fails or when a recorded entry was changed.
   */
  write(journal: Journal<E>): void
  /**
   * Puts on the disk what others wrote and this program has only read: they may have been killed before they could.
   * Asks for the lock. Throws NotRecorded where that fails.
   */
  flush(): void
}

/** The adapter for the journal at `path`; nothing is read or created yet. */
export function openJournalFile<E extends Numbered>(
  path: string,
  { parse, fs = nodeFileSystem, most = MOST_JOURNAL_BYTES }: JournalFileOptions<E>,
): JournalFile<E> {
  return new AppendOnlyFile(path, parse, fs, most)
}

/**
 * The bytes of the journal at `path`, right or not, and when it was changed, in milliseconds. Throws the system's error,
 * EOVERFLOW where it is longer than any.
 */
export function readJournalBytes(
  path: string,
  fs: FileSystem = nodeFileSystem,
): ReturnType<typeof readWhole> {
  return readWhole(path, MOST_JOURNAL_BYTES, fs)
}

/** Tells one state of a file from another. */
export function stampOf(stat: FileStat): string {
  return `${stat.ino}:${stat.size}:${stat.mtimeMs}`
}

class AppendOnlyFile<E extends Numbered> implements JournalFile<E> {
  readonly path: string
  problem: JournalProblem | null = null
  stamp = ''
  readonly #parse: (raw: unknown) => E
  readonly #fs: FileSystem
  readonly #most: number
  readonly #journal: Journal<E> = { entries: [] }
  /** The entries that are on the disk, which no caller can reach. */
  readonly #recorded: E[] = []
  #end: LineEnd = FILE_START
  /** The last good line as it stands in the file: it ends the chain, so it vouches for all before it. */
  #lastLine: Buffer = Buffer.alloc(0)
  #mustRead = true
  /** From here on nothing was flushed by this program. Null where all was. */
  #unflushedFrom: number | null = null

  constructor(path: string, parse: (raw: unknown) => E, fs: FileSystem, most: number) {
    this.path = path
    this.#parse = parse
    this.#fs = fs
    this.#most = most
  }

  get goodBytes(): number {
    return this.#end.byte
  }

  read(): Journal<E> {
    const tail = this.#readTail()
    const known = this.#lastLine.length
    if (tail.length < known || !tail.subarray(0, known).equals(this.#lastLine)) {
      this.problem = { kind: 'replaced' }
    } else {
      const added = tail.subarray(known)
      const lines = readLines(added, this.#parse, this.#end)
      this.problem = lines.problem
      if (lines.entries.length > 0) this.#unflushedFrom ??= this.#end.byte
      this.#accept(added, lines)
    }
    this.#mustRead = false
    this.#restore(this.#journal)
    return this.#journal
  }

  write(journal: Journal<E>): void {
    try {
      this.#append(journal)
    } finally {
      this.#restore(journal)
      if (journal !== this.#journal) this.#restore(this.#journal)
    }
  }

  flush(): void {
    if (this.#mustRead) throw new NotRecorded('read-first', this.path)
    if (this.problem !== null) throw new NotRecorded(this.problem.kind, this.path)
    if (this.#unflushedFrom === null) return
    this.#writeOthersAnew()
    try {
      withFile(this.#fs, this.path, 'r+', (fd) => this.#fs.fsyncSync(fd))
      syncFolder(this.#fs, dirname(this.path))
    } catch (error) {
      this.#mustRead = true
      throw notRecorded(error, this.path)
    }
    this.#unflushedFrom = null
  }

  #append(journal: Journal<E>): void {
    if (this.#mustRead) throw new NotRecorded('read-first', this.path)
    if (this.problem !== null) throw new NotRecorded(this.problem.kind, this.path)
    if (!this.#holdsRecorded(journal)) throw new NotRecorded('not-append-only', this.path)
    const added = journal.entries.slice(this.#recorded.length)
    if (added.length === 0) return

    const bytes = this.#linesOf(added)
    if (this.#end.byte + bytes.length > this.#most) throw new NotRecorded('journal-full', this.path)
    // The reader judges the very bytes that go to the disk: what it would refuse tomorrow is not written today.
    const lines = readLines(bytes, this.#parse, this.#end)
    if (lines.problem !== null) {
      const cause = 'cause' in lines.problem ? lines.problem.cause : lines.problem
      throw new NotRecorded('unreadable-entry', this.path, { cause })
    }
    this.#writeOthersAnew()
    let began = false
    try {
      withFile(this.#fs, this.path, 'a', (fd) => {
        if (this.#fs.fstatSync(fd).size !== this.#end.byte)
          throw new NotRecorded('changed-underneath', this.path)
        began = true
        this.#writeDurably(fd, bytes)
      })
    } catch (error) {
      this.#mustRead = true
      const takenBack = !began || this.#takeBack(bytes)
      if (!takenBack) this.#unflushedFrom ??= this.#end.byte
      throw error instanceof NotRecorded
        ? new NotRecorded(error.code, this.path, { takenBack })
        : notRecorded(error, this.path, takenBack)
    }
    this.#unflushedFrom = null
    this.#accept(bytes, lines)
  }

  #linesOf(entries: E[]): Buffer {
    let { crc } = this.#end
    let text = ''
    try {
      for (const entry of entries) {
        const line = writeLine(crc, entry)
        text += line.text
        crc = line.crc
      }
    } catch (cause) {
      throw new NotRecorded('unreadable-entry', this.path, { cause })
    }
    return Buffer.from(text)
  }

  #writeDurably(fd: number, bytes: Buffer): void {
    const written = this.#fs.writeSync(fd, bytes)
    if (written !== bytes.length) throw new NotRecorded('short-write', this.path)
    this.#fs.fdatasyncSync(fd)
    if (this.#end.byte === 0) syncFolder(this.#fs, dirname(this.path))
    this.stamp = stampOf(this.#fs.fstatSync(fd))
  }

  /**
   * What others wrote last, or a write of ours that failed and could not be cut off, is read back and written over itself,
   * to be flushed with what follows on it. Once a flush has failed, the system may take the bytes for written that are on
   * no disk, and say yes to every flush after it (Linux does); and whether that happened to others, nobody here knows.
   */
  #writeOthersAnew(): void {
    if (this.#unflushedFrom === null) return
    const from = Math.max(this.#unflushedFrom, this.#end.byte - MOST_WRITTEN_ANEW)
    try {
      withFile(this.#fs, this.path, 'r+', (fd) => {
        const bytes = readBytes(this.#fs, fd, from, this.#end.byte)
        if (this.#fs.writeSync(fd, bytes, 0, bytes.length, from) !== bytes.length)
          throw new NotRecorded('short-write', this.path)
      })
    } catch (error) {
      this.#mustRead = true
      throw notRecorded(error, this.path)
    }
  }

  /** Cuts a failed write off the file again, if what follows the good bytes is that write and nothing else. */
  #takeBack(bytes: Buffer): boolean {
    try {
      return withFile(this.#fs, this.path, 'r+', (fd) => {
        const left = readBytes(this.#fs, fd, this.#end.byte, this.#fs.fstatSync(fd).size)
        if (!bytes.subarray(0, left.length).equals(left)) return false
        if (left.length > 0) this.#fs.ftruncateSync(fd, this.#end.byte)
        this.#fs.fsyncSync(fd)
        return true
      })
    } catch {
      return false
    }
  }

  #readTail(): Buffer {
    const from = this.#end.byte - this.#lastLine.length
    try {
      return withFile(this.#fs, this.path, 'r', (fd) => {
        const stat = this.#fs.fstatSync(fd)
        if (stat.size > this.#most) throw tooLong(this.path)
        const bytes = readBytes(this.#fs, fd, from, stat.size)
        this.stamp = stampOf(stat)
        return bytes
      })
    } catch (error) {
      if (errnoOf(error) !== 'ENOENT') throw error
      this.stamp = ''
      return Buffer.alloc(0)
    }
  }

  #accept(bytes: Buffer, { entries, goodBytes, end }: LinesRead<E>): void {
    if (entries.length === 0) return
    for (const entry of entries) this.#recorded.push(entry)
    const start = bytes.lastIndexOf(LINE_FEED, goodBytes - 2) + 1
    this.#lastLine = Buffer.from(bytes.subarray(start, goodBytes))
    this.#end = end
  }

  /**
   * Whether a journal still begins with what is recorded, judged by its last recorded entry: a walk over all of them
   * would make each append as slow as the record is long, and what is on the disk is out of reach of any caller.
   */
  #holdsRecorded({ entries }: Journal<E>): boolean {
    const { length } = this.#recorded
    return entries.length >= length && entries[length - 1] === this.#recorded[length - 1]
  }

  /** Makes the journal hold what is recorded, no more and nothing else; looked at from its end, where it grew. */
  #restore({ entries }: Journal<E>): void {
    let same = Math.min(entries.length, this.#recorded.length)
    while (same > 0 && entries[same - 1] !== this.#recorded[same - 1]) same -= 1
    // Setting a length that does not change still costs a copy of the whole array.
    if (entries.length > same) entries.length = same
    for (const entry of this.#recorded.slice(same)) entries.push(entry)
  }
}

const LINE_FEED = 0x0a

/** More than one act is long; what lies further back was followed by others who flushed. */
const MOST_WRITTEN_ANEW = 64 * 1024
