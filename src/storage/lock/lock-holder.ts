import { hostname } from 'node:os'
import { threadId } from 'node:worker_threads'
import { errnoOf, type FileSystem, readBytes, withFile } from '../files/file-system.ts'

/** What a lock file says about the process that made it. */
export interface Holder {
  pid: number
  host: string
  since: string
  /** The worker thread within the process. */
  thread: number
  token: string
  /** Who works there, where that was said. */
  by?: string | undefined
}

/** A lock file as found; `holder` is null when it is empty or garbled. */
export interface Found {
  holder: Holder | null
  /** Milliseconds, of the file system's clock. */
  changed: number
}

/** This process, as the holder of a lock with that token. */
export function holderHere(token: string, by?: string): Holder {
  const since = new Date().toISOString()
  return { pid: process.pid, host: hostname(), since, thread: threadId, token, ...(by && { by }) }
}

/** The lock file at a path, or null when there is none. */
export function readLock(path: string, fs: FileSystem): Found | null {
  try {
    return withFile(fs, path, 'r', (fd) => {
      const { size, mtimeMs } = fs.fstatSync(fd)
      return { holder: parseHolder(readBytes(fs, fd, 0, Math.min(size, 4096))), changed: mtimeMs }
    })
  } catch (error) {
    if (errnoOf(error) === 'ENOENT') return null
    throw error
  }
}

function parseHolder(bytes: Buffer): Holder | null {
  let raw: unknown
  try {
    raw = JSON.parse(bytes.toString('utf8'))
  } catch {
    return null
  }
  if (typeof raw !== 'object' || raw === null) return null
  const { pid, host, since, thread, token, by } = raw as Record<keyof Holder, unknown>
  const isLegible =
    Number.isSafeInteger(pid) && Number(pid) > 0 && [host, since, token].every((text) => isPlainText(text))
  return isLegible
    ? ({ pid, host, since, thread, token, ...(isPlainText(by) ? { by } : {}) } as Holder)
    : null
}

/** Host, time and name are shown to a person. */
function isPlainText(value: unknown): boolean {
  return typeof value === 'string' && value.length <= 255 && !/\p{C}/u.test(value)
}
