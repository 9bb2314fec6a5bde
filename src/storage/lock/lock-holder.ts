import { readFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { threadId } from 'node:worker_threads'
import { errnoOf, type FileSystem, readBytes, withFile } from '../files/file-system.ts'
import { isAlive } from './process-alive.ts'

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
  /** The start of the computer that it runs in, where the system tells one from another. */
  boot?: string | undefined
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
  const boot = bootHere()
  return {
    ...{ pid: process.pid, host: hostname(), since, thread: threadId, token },
    ...(by && { by }),
    ...(boot && { boot }),
  }
}

/** Whether a process of this computer lives. After a loss of power its number is soon another's, but not its start. */
export function isHolderAlive({ pid, boot }: Pick<Holder, 'pid' | 'boot'>): boolean {
  const here = bootHere()
  if (boot !== undefined && here !== undefined && boot !== here) return false
  return isAlive(pid)
}

/** Linux gives each start of a computer an id of its own (proc(5)); other systems have no such file. */
function bootHere(): string | undefined {
  bootRead ??= readBoot()
  return bootRead || undefined
}

/** Read once, for a lock is taken with every entry; empty where there is none. */
let bootRead: string | null = null

function readBoot(): string {
  try {
    return readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim()
  } catch {
    return ''
  }
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
  const { pid, host, since, thread, token, by, boot } = raw as Record<keyof Holder, unknown>
  const isLegible =
    Number.isSafeInteger(pid) && Number(pid) > 0 && [host, since, token].every((text) => isPlainText(text))
  return isLegible
    ? ({
        ...{ pid, host, since, thread, token },
        ...(isPlainText(by) && { by }),
        ...(isPlainText(boot) && { boot }),
      } as Holder)
    : null
}

/** Host, time and name are shown to a person. */
function isPlainText(value: unknown): boolean {
  return typeof value === 'string' && value.length <= 255 && !/\p{C}/u.test(value)
}
