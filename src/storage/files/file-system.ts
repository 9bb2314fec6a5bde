import fs, { constants } from 'node:fs'
import os from 'node:os'
import { sep } from 'node:path'

/** What storage asks of the file system, so that a test can make any one call fail. */
export interface FileSystem {
  /** Opens a file or a folder, never what a link leads to, and waits for no pipe: ELOOP, EFTYPE. */
  openSync(path: string, flags: string, mode?: number): number
  closeSync(fd: number): void
  fstatSync(fd: number): FileStat
  statSync(path: string): FileStat
  readSync(fd: number, buffer: Uint8Array, offset: number, length: number, position: number): number
  /** Writes where the last write ended, or at `position`. */
  writeSync(
    fd: number,
    buffer: Uint8Array,
    offset?: number | null,
    length?: number | null,
    position?: number | null,
  ): number
  fdatasyncSync(fd: number): void
  fsyncSync(fd: number): void
  ftruncateSync(fd: number, length: number): void
  unlinkSync(path: string): void
  renameSync(from: string, to: string): void
  /** Answers the first folder that it made, where it made the ones above as well. */
  mkdirSync(path: string, options: { mode: number; recursive?: boolean }): string | undefined
  rmdirSync(path: string): void
}

export interface FileStat {
  size: number
  mtimeMs: number
  ino: number
}

/** The real one. Its errors have the system's names. */
export const nodeFileSystem: FileSystem = {
  openSync: namingErrors(openPlain),
  closeSync: namingErrors((fd) => fs.closeSync(fd)),
  fstatSync: namingErrors((fd) => fs.fstatSync(fd)),
  statSync: namingErrors((path) => fs.statSync(path)),
  readSync: namingErrors((fd, buffer, offset, length, position) =>
    fs.readSync(fd, buffer, offset, length, position),
  ),
  writeSync: namingErrors((fd, buffer, offset, length, position) =>
    fs.writeSync(fd, buffer, offset, length, position),
  ),
  fdatasyncSync: namingErrors((fd) => fs.fdatasyncSync(fd)),
  fsyncSync: namingErrors((fd) => fs.fsyncSync(fd)),
  ftruncateSync: namingErrors((fd, length) => fs.ftruncateSync(fd, length)),
  unlinkSync: namingErrors((path) => fs.unlinkSync(path)),
  renameSync: namingErrors((from, to) => fs.renameSync(from, to)),
  mkdirSync: namingErrors((path, options) => fs.mkdirSync(path, options)),
  rmdirSync: namingErrors((path) => fs.rmdirSync(path)),
}

/** A call to the system whose errors have the system's names, also those that Node has none for. */
export function namingErrors<A extends unknown[], R>(call: (...args: A) => R): (...args: A) => R {
  return (...args) => {
    try {
      return call(...args)
    } catch (error) {
      const code = errnoOf(error)
      throw code === undefined ? error : Object.assign(error as Error, { code })
    }
  }
}

/**
 * Opens what lies at the path itself. A link there may lead anywhere, and may have been put there since somebody
 * looked; a pipe would hold the program until somebody writes into it, and a device may have no end.
 */
function openPlain(path: string, flags: string, mode?: number): number {
  // Where the system cannot refuse a link while it opens, looking first is all that can be done.
  if (!constants.O_NOFOLLOW && fs.lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink())
    throw refusedToOpen('ELOOP', path)
  const fd = fs.openSync(
    path,
    flagsOf(flags) | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0),
    mode,
  )
  const about = fs.fstatSync(fd)
  if (about.isFile() || about.isDirectory()) return fd
  fs.closeSync(fd)
  throw refusedToOpen('EFTYPE', path)
}

const { O_APPEND, O_CREAT, O_EXCL, O_RDONLY, O_RDWR, O_WRONLY } = constants
const FLAGS = new Map([
  ['r', O_RDONLY],
  ['r+', O_RDWR],
  ['a', O_APPEND | O_CREAT | O_WRONLY],
  ['wx', O_CREAT | O_EXCL | O_WRONLY],
])

function flagsOf(flags: string): number {
  const number = FLAGS.get(flags)
  if (number === undefined) throw new RangeError(`files are not opened with '${flags}' here`)
  return number
}

function refusedToOpen(code: 'ELOOP' | 'EFTYPE', path: string): Error {
  return Object.assign(new Error(`${code}: ${path} is no plain file`), { code, path, syscall: 'open' })
}

/** Runs `work` on an open file and closes it. */
export function withFile<T>(
  files: FileSystem,
  path: string,
  flags: string,
  work: (fd: number) => T,
  mode = 0o600,
): T {
  const fd = files.openSync(path, flags, mode)
  try {
    return work(fd)
  } finally {
    closeQuietly(files, fd)
  }
}

/** Closes; a failure is ignored, for what matters was synced before. */
export function closeQuietly(files: FileSystem, fd: number): void {
  try {
    files.closeSync(fd)
  } catch {}
}

/** Removes a file, if it is there and can be removed. */
export function removeQuietly(files: FileSystem, path: string): void {
  try {
    files.unlinkSync(path)
  } catch {}
}

/** The bytes from `from` up to `to`, or up to the end of the file when it ends earlier. */
export function readBytes(files: FileSystem, fd: number, from: number, to: number): Buffer {
  const bytes = Buffer.allocUnsafe(Math.max(0, to - from))
  let filled = 0
  while (filled < bytes.length) {
    const count = files.readSync(fd, bytes, filled, bytes.length - filled, from + filled)
    if (count === 0) break
    filled += count
  }
  return bytes.subarray(0, filled)
}

/** Writes all of `bytes`, in as many calls as it takes. For new files, which nobody reads before the end. */
export function writeAll(files: FileSystem, fd: number, bytes: Uint8Array): void {
  let written = 0
  while (written < bytes.length) {
    const count = files.writeSync(fd, bytes.subarray(written))
    if (count === 0) throw Object.assign(new Error('nothing more was written'), { code: 'EIO' })
    written += count
  }
}

/** Makes the names in a folder durable: a file just created, renamed or removed. */
export function syncFolder(files: FileSystem, path: string): void {
  try {
    // The home may be a link, which is its owner's choice; what is in it is not opened through one.
    withFile(files, `${path}${sep}.`, 'r', (fd) => files.fsyncSync(fd))
  } catch (error) {
    if (!cannotSyncFolders.has(errnoOf(error) ?? '')) throw error
  }
}

// Windows does not open folders, some network and removable file systems do not sync them, and a folder may be
// closed to reading.
const cannotSyncFolders = new Set(['EPERM', 'EACCES', 'EISDIR', 'EINVAL', 'ENOTSUP', 'ENOSYS'])

/** The system's error code ('ENOSPC'), or undefined for an error that no system call gave. */
export function errnoOf(error: unknown): string | undefined {
  if (typeof error !== 'object' || error === null || !('code' in error)) return undefined
  if (typeof error.code !== 'string') return undefined
  if (/^E[A-Z0-9]+$/.test(error.code)) return error.code
  return UNNAMED.test(error.code) && 'errno' in error
    ? nameOf(error.code, Math.abs(Number(error.errno)))
    : undefined
}

/**
 * How Node names what it does not know: on Linux and macOS the error of a network disk that let go of a file, or of a full
 * quota; on Windows many that a network disk gives.
 */
const UNNAMED = /^(UNKNOWN|Unknown system error -?\d+)$/

/** The system's own name of such an error, else one by its number. */
function nameOf(code: string, errno: number): string {
  const [name] = Object.entries(os.constants.errno).find(([, number]) => number === errno) ?? []
  const known = name ?? (process.platform === 'linux' ? LINUX_ERRNO.get(errno) : undefined)
  return known ?? (code === 'UNKNOWN' ? 'EUNKNOWN' : `E${errno}`)
}

/** From include/uapi/asm-generic/errno.h of Linux, where Node has them under no name at all: what disks answer with. */
const LINUX_ERRNO = new Map([
  [117, 'EUCLEAN'],
  [123, 'ENOMEDIUM'],
])
