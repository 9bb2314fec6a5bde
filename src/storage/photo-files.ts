import { createHash } from 'node:crypto'
import fs from 'node:fs'
import { dirname, join } from 'node:path'
import { chunksOf, sha256Of } from './files/file-chunks.ts'
import { errnoOf, removeQuietly, syncFolder, withFile, writeAll } from './files/file-system.ts'
import { type NamingFileSystem, nodeNamingFileSystem, putInPlace } from './files/put-in-place.ts'
import { notRecorded } from './journal/not-recorded.ts'
import { isAlive } from './lock/process-alive.ts'

/** The name of the folder of pictures inside a job's folder. */
export const PHOTOS_NAME = 'photos'

/** What keeping pictures asks of the file system beyond journals. */
export type PhotoFileSystem = NamingFileSystem

/** A picture to copy into the job. */
export interface PictureToCopy {
  source: string
  /** Of its bytes as they were when it was looked at. */
  sha256: string
  /** The name that the copy gets, without `.` and extension, and without the `-2` that a clash adds. */
  stem: string
  extension: string
}

/** The source could not be read, or its bytes are no longer those that were looked at (`errno` null). */
export class SourceChanged extends Error {
  override readonly name = 'SourceChanged'
  readonly errno: string | null
  constructor(path: string, errno: string | null) {
    super(`${path} ${errno === null ? 'has changed' : `cannot be read: ${errno}`}`)
    this.errno = errno
  }
}

/**
 * The pictures of one job. `recorded` are the names that the record has: they are never given to anything else.
 * Nothing is made before the first copy. Whatever the disk refuses is thrown as NotRecorded.
 */
export class PhotoFiles {
  readonly path: string
  readonly #fs: PhotoFileSystem
  readonly #taken: Set<string>
  /** Copies that no entry names, by their length: those of an import that was broken off. */
  #unclaimed: Map<number, string[]> | null = null
  #copies = 0
  /** The next number to try behind a name that several have. */
  readonly #next = new Map<string, number>()

  constructor(jobFolder: string, recorded: Iterable<string>, fs: PhotoFileSystem = nodeNamingFileSystem) {
    this.path = join(jobFolder, PHOTOS_NAME)
    this.#fs = fs
    this.#taken = new Set([...recorded].map((name) => name.toLowerCase()))
  }

  /** Whether the copy of that name is there. */
  has(name: string): boolean {
    return photoFile(dirname(this.path), name) !== null
  }

  /**
   * Copies a picture in, byte by byte the same, and answers the name it got. A copy that is there without an entry
   * is taken instead of a new one. On the disk, but for its name: that takes `flush`. Throws SourceChanged, NotRecorded.
   */
  copyIn(picture: PictureToCopy): string {
    return this.#recorded(() => {
      this.#makeFolder()
      const found = this.#findUnclaimed(picture)
      if (found !== null && isNamed(found, picture)) return this.#claim(found)
      const temporary = this.#copy(picture)
      try {
        return this.#claim(this.#name(temporary, picture))
      } finally {
        removeQuietly(this.#fs, temporary)
      }
    })
  }

  /**
   * Puts back the copy of a recorded picture that is missing; false when something else has its name. Throws
   * SourceChanged, NotRecorded.
   */
  restore(name: string, source: string, sha256: string): boolean {
    return this.#recorded(() => {
      this.#makeFolder()
      const temporary = this.#copy({ source, sha256 })
      try {
        return putInPlace(this.#fs, temporary, join(this.path, name))
      } finally {
        removeQuietly(this.#fs, temporary)
      }
    })
  }

  /** Makes the names of all copies durable. Only then may an entry name them. */
  flush(): void {
    this.#recorded(() => {
      syncFolder(this.#fs, this.path)
      // The folder itself is new at times, and its name may not have been flushed when that was tried.
      syncFolder(this.#fs, dirname(this.path))
    })
  }

  /** Removes a copy that no entry names, or ever will: its picture was recorded with another copy. */
  remove(name: string): void {
    removeQuietly(this.#fs, join(this.path, name))
  }

  #makeFolder(): void {
    if (this.#unclaimed !== null) return
    try {
      fs.mkdirSync(this.path, { mode: 0o700 })
      syncFolder(this.#fs, dirname(this.path))
    } catch (error) {
      if (errnoOf(error) !== 'EEXIST') throw error
    }
    if (!isOwnFolder(this.path))
      throw Object.assign(new Error(`${this.path} is no folder of the job`), { code: 'ELOOP' })
    this.#removeLeftovers()
    this.#unclaimed = this.#listUnclaimed()
  }

  /** Half copies of imports that were killed. One of a living program may still be written. */
  #removeLeftovers(): void {
    for (const name of fs.readdirSync(this.path)) {
      const [, pid] = TEMPORARY.exec(name) ?? []
      if (pid !== undefined && Number(pid) !== process.pid && !isAlive(Number(pid)))
        removeQuietly(this.#fs, join(this.path, name))
    }
  }

  #listUnclaimed(): Map<number, string[]> {
    const unclaimed = new Map<number, string[]>()
    for (const entry of fs.readdirSync(this.path, { withFileTypes: true })) {
      if (!entry.isFile() || !isCopyName(entry.name) || this.#taken.has(entry.name.toLowerCase())) continue
      const { size } = this.#fs.statSync(join(this.path, entry.name))
      unclaimed.set(size, [...(unclaimed.get(size) ?? []), entry.name])
    }
    return unclaimed
  }

  #findUnclaimed({ source, sha256 }: PictureToCopy): string | null {
    if (!this.#unclaimed || this.#unclaimed.size === 0) return null
    const { size } = fromSource(source, () => this.#fs.statSync(source))
    const same = this.#unclaimed.get(size) ?? []
    return same.find((name) => sha256Of(this.#fs, join(this.path, name)) === sha256) ?? null
  }

  #claim(name: string): string {
    this.#taken.add(name.toLowerCase())
    for (const names of this.#unclaimed?.values() ?? []) {
      const index = names.indexOf(name)
      if (index >= 0) names.splice(index, 1)
    }
    return name
  }

  /** Copies into a file beside the others, flushed, and answers its path. */
  #copy({ source, sha256 }: Pick<PictureToCopy, 'source' | 'sha256'>): string {
    this.#copies += 1
    const temporary = join(this.path, `.copy-${process.pid}-${this.#copies}.tmp`)
    const hash = createHash('sha256')
    removeQuietly(this.#fs, temporary)
    const from = fromSource(source, () => this.#fs.openSync(source, 'r'))
    try {
      withFile(this.#fs, temporary, 'wx', (fd) => {
        const chunks = chunksOf(this.#fs, from)
        const next = () => fromSource(source, () => chunks.next())
        for (let read = next(); !read.done; read = next()) {
          hash.update(read.value)
          writeAll(this.#fs, fd, read.value)
        }
        this.#fs.fsyncSync(fd)
      })
      if (hash.digest('hex') !== sha256) throw new SourceChanged(source, null)
      return temporary
    } catch (error) {
      removeQuietly(this.#fs, temporary)
      throw error
    } finally {
      this.#fs.closeSync(from)
    }
  }

  /** Gives a copy the first name that is free. Thousands may be called alike: what was taken is not tried again. */
  #name(temporary: string, { stem, extension }: PictureToCopy): string {
    const alike = `${stem}.${extension}`
    for (let number = this.#next.get(alike) ?? 1; ; number += 1) {
      const name = number === 1 ? alike : `${stem}-${number}.${extension}`
      if (this.#taken.has(name.toLowerCase())) continue
      if (!putInPlace(this.#fs, temporary, join(this.path, name))) continue
      this.#next.set(alike, number + 1)
      return name
    }
  }

  #recorded<T>(work: () => T): T {
    try {
      return work()
    } catch (error) {
      throw notRecorded(error, this.path)
    }
  }
}

/**
 * Where the copy of a recorded picture lies; null where there is none. A name that is no plain name of a file leads
 * nowhere, and neither does a link: a record may come from elsewhere.
 */
export function photoFile(jobFolder: string, name: string): string | null {
  if (name.startsWith('.') || /[/\\:]|\p{C}/u.test(name)) return null
  const folder = join(jobFolder, PHOTOS_NAME)
  const path = join(folder, name)
  if (!isOwnFolder(folder)) return null
  return fs.lstatSync(path, { throwIfNoEntry: false })?.isFile() ? path : null
}

/** Whether a folder lies at the path itself: a link in its place leads out of the job. */
function isOwnFolder(path: string): boolean {
  return fs.lstatSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false
}

/** Whether a name is one that copies get. Whatever else lies in the folder is the user's own. */
export function isCopyName(name: string): boolean {
  return /^\d{8}-\d{6}(?:-[a-z0-9-]+)?\.(?:jpg|png)$/.test(name)
}

const TEMPORARY = /^\.copy-(\d+)-\d+\.tmp$/

function isNamed(name: string, { stem, extension }: PictureToCopy): boolean {
  const rest = name.startsWith(stem) ? name.slice(stem.length) : ''
  return new RegExp(`^(?:-[1-9]\\d{0,5})?\\.${extension}$`).test(rest)
}

function fromSource<T>(path: string, work: () => T): T {
  try {
    return work()
  } catch (error) {
    const errno = errnoOf(error)
    throw errno === undefined ? error : new SourceChanged(path, errno)
  }
}
