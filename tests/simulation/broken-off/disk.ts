import type { FileStat, FileSystem } from '../../../src/storage/files/file-system.ts'
import type { Chance } from '../../support/damage/chance.ts'

/** The call in which the power goes, and how far it was by then. */
export type Cut = 'before the write' | 'half of the write' | 'after the write' | 'after the flush'

interface File {
  bytes: Buffer
  /** How much of it is used. */
  length: number
  /** How much of it is on the disk: what is written behind that is lost with the power, all of it or from some place on. */
  flushed: number
  changed: number
  ino: number
}

/**
 * A disk in memory that may lose its power in a call that writes to a journal. What was not flushed is then lost, or half
 * of a line stays. From the cut to the next start every call fails, for the program that made it is gone as well. It has
 * the calls that a journal and its lock need, and files that only grow or are cut.
 */
export class Disk {
  readonly fs: FileSystem
  readonly #files = new Map<string, File>()
  readonly #open = new Map<number, string>()
  #lastFd = 100
  #clock = 0
  #cut: Cut | null = null
  #isDead = false

  constructor() {
    this.fs = this.#fileSystem()
  }

  get isDead(): boolean {
    return this.#isDead
  }

  /** The power goes at the next write to a journal. */
  cutAtNextWrite(cut: Cut): void {
    this.#cut = cut
  }

  /** The computer is started again: what was not flushed is lost, or as far as it had come. */
  restart(chance: Chance): void {
    for (const [path, file] of this.#files) {
      if (/\.lock(\.takeover)*$/.test(path)) this.#files.delete(path)
      file.length = chance.whole(file.flushed, file.length)
      file.flushed = file.length
    }
    this.#open.clear()
    this.#cut = null
    this.#isDead = false
  }

  /** The bytes of a file as they lie there. */
  bytes(path: string): Buffer {
    const file = this.#files.get(path)
    return file ? Buffer.from(file.bytes.subarray(0, file.length)) : Buffer.alloc(0)
  }

  #fileSystem(): FileSystem {
    return {
      openSync: (path, flags) => this.#openFile(path, flags),
      closeSync: (fd) => {
        this.#open.delete(fd)
      },
      fstatSync: (fd) => this.#stat(this.#of(fd)),
      statSync: (path) => this.#stat(this.#alive(path)),
      readSync: (fd, buffer, offset, length, position) => {
        const { bytes, length: end } = this.#of(fd)
        return bytes.copy(buffer, offset, position, Math.min(end, position + length))
      },
      writeSync: (fd, buffer, offset, length, position) => {
        const part = buffer.subarray(offset ?? 0, (offset ?? 0) + (length ?? buffer.length - (offset ?? 0)))
        return this.#write(this.#of(fd), part, position ?? null, this.#isJournal(fd))
      },
      fdatasyncSync: (fd) => this.#flush(fd),
      fsyncSync: (fd) => this.#flush(fd),
      ftruncateSync: (fd, length) => {
        const file = this.#of(fd)
        file.length = length
        file.flushed = Math.min(file.flushed, length)
        file.changed = this.#tick()
      },
      unlinkSync: (path) => {
        if (!this.#files.delete(path)) throw systemError('ENOENT', path)
      },
      renameSync: () => notHere('renameSync'),
      mkdirSync: () => notHere('mkdirSync'),
      rmdirSync: () => notHere('rmdirSync'),
    }
  }

  #openFile(path: string, flags: string): number {
    const isFolder = path.endsWith('/.')
    const known = isFolder ? undefined : this.#files.get(path)
    // The lock of a program that is gone is of no account here.
    if (this.#isDead && !path.includes('.lock')) throw new PowerCut()
    if (!isFolder && !known && flags !== 'a' && flags !== 'wx') throw systemError('ENOENT', path)
    if (known && flags === 'wx') throw systemError('EEXIST', path)
    if (!isFolder && !known) {
      const changed = this.#tick()
      this.#files.set(path, { bytes: Buffer.alloc(4096), length: 0, flushed: 0, changed, ino: changed })
    }
    this.#lastFd += 1
    this.#open.set(this.#lastFd, path)
    return this.#lastFd
  }

  #write(file: File, part: Uint8Array, position: number | null, isJournal: boolean): number {
    // A line goes behind the last one; what is written over itself is there already.
    const cut = isJournal && position === null ? this.#cut : null
    if (cut === 'before the write') this.#die()
    const at = position ?? file.length
    const written = cut === 'half of the write' ? part.subarray(0, part.length >> 1) : part
    const end = at + written.length
    if (end > file.bytes.length) {
      const more = Buffer.alloc(end * 2)
      file.bytes.copy(more, 0, 0, file.length)
      file.bytes = more
    }
    file.bytes.set(written, at)
    file.length = Math.max(file.length, end)
    file.changed = this.#tick()
    if (cut === 'half of the write' || cut === 'after the write') this.#die()
    return part.length
  }

  #flush(fd: number): void {
    const path = this.#open.get(fd) ?? ''
    if (path.endsWith('/.')) return
    const file = this.#of(fd)
    file.flushed = file.length
    if (this.#cut === 'after the flush' && this.#isJournal(fd)) this.#die()
  }

  #isJournal(fd: number): boolean {
    return this.#open.get(fd)?.endsWith('/journal.log') ?? false
  }

  #of(fd: number): File {
    return this.#alive(this.#open.get(fd) ?? '')
  }

  #alive(path: string): File {
    if (this.#isDead && !path.includes('.lock')) throw new PowerCut()
    const file = this.#files.get(path)
    if (!file) throw systemError('ENOENT', path)
    return file
  }

  #stat({ length, changed, ino }: File): FileStat {
    return { size: length, mtimeMs: changed, ino }
  }

  #tick(): number {
    this.#clock += 1
    return this.#clock
  }

  #die(): never {
    this.#isDead = true
    throw new PowerCut()
  }
}

/** The program is gone in the middle of a call: whatever it would still do, it does to a disk that answers nothing. */
class PowerCut extends Error {
  override readonly name = 'PowerCut'
  readonly code = 'EIO'
}

function systemError(code: string, path: string): Error {
  return Object.assign(new Error(`${code}: ${path}`), { code, path })
}

function notHere(call: string): never {
  throw new Error(`${call} is not to be expected of a journal`)
}
