import { randomUUID } from 'node:crypto'
import { hostname } from 'node:os'
import { threadId } from 'node:worker_threads'
import {
  closeQuietly,
  errnoOf,
  type FileSystem,
  nodeFileSystem,
  removeQuietly,
  writeAll,
} from '../files/file-system.ts'
import { type Found, type Holder, holderHere, isHolderAlive, readLock } from './lock-holder.ts'

export interface LockOptions {
  /** How long to wait for another's lock, in milliseconds; 5000 unless told. */
  limit?: number | undefined
  /** Who works here, to be named to those who wait. */
  by?: string | undefined
  fs?: FileSystem | undefined
}

/**
 * Another process has the lock and did not give it back in time. `elsewhere` says that it runs on another computer,
 * where nobody here can see whether it lives: then only a person can lift the lock, by deleting the file at `path`.
 * Without a legible holder (all null) it is a lock just being made, or one that counts as abandoned after 10 s.
 */
export class LockHeld extends Error {
  override readonly name = 'LockHeld'
  readonly code = 'lock-held'
  readonly path: string
  readonly pid: number | null
  readonly host: string | null
  /** ISO time. */
  readonly since: string | null
  /** Who works there, where that was said. */
  readonly by: string | null
  readonly elsewhere: boolean

  constructor(path: string, holder: Holder | null) {
    const who = holder
      ? `process ${holder.pid} on ${holder.host}, since ${holder.since}`
      : 'an unknown process'
    super(`${path} is held by ${who}; if nothing is writing there any more, delete that file`)
    this.path = path
    this.pid = holder?.pid ?? null
    this.host = holder?.host ?? null
    this.since = holder?.since ?? null
    this.by = holder?.by ?? null
    this.elsewhere = holder !== null && holder.host !== hostname()
  }
}

/**
 * Runs `work` while no other process that asks for the lock at `path` runs its own. `work` must end before it
 * returns: a promise would outlive the lock. Throws LockHeld when the lock does not come free in time, or the
 * system's error when the lock file cannot be made.
 *
 * The lock is a file that only one process can create. What is not obvious is how the lock of a process that was
 * killed is removed without ever removing a living one's:
 *
 * 1. A lock is stale when it names this computer and a process that is dead. The dead stay dead, so what is stale
 *    stays stale until it is removed. (If the number was given to a new process, the lock merely looks alive; but not
 *    after a restart of the computer, where the system tells its starts apart.)
 * 2. A lock file is removed by its holder, or by a process that holds the lock on taking over: the file `.takeover`
 *    beside it. The holder of a stale lock is dead, so only the second kind can remove one, and one at a time.
 * 3. Having that second lock, the process looks again. If the first is stale now, nobody else can remove it before
 *    this process does; and while it lies there, nobody can create another. So what is removed is the stale one.
 * 4. Afterwards all start afresh from creating the file, which one of them wins.
 *
 * The second lock is taken by the same rules, should its holder have been killed too; by induction each level is
 * safe if the next one is. At the last level nothing is taken over.
 *
 * A process can also be killed, or be put to sleep, between creating the file and writing its name into it. A lock
 * without a legible name counts as stale when it is older than 10 s, measured against the second lock, just
 * created, so both times come from the file system's own clock. Could its creator wake up at that moment? It gives
 * up a lock for which it needed more than 5 s, and removes it only by rule 2. One that needed less had written its
 * name before 10 s were over.
 *
 * A lock from another computer is never stale: from here nobody can tell. Two computers, or containers, of the
 * same name that share a folder would mistake each other's locks.
 */
export function withLock<T>(
  path: string,
  { limit = 5000, by, fs = nodeFileSystem }: LockOptions,
  work: () => T,
): T {
  const lock = acquire(path, { fs, by, deadline: performance.now() + limit, level: 0 })
  try {
    return work()
  } finally {
    release(lock, fs)
  }
}

interface Held {
  path: string
  token: string
  changed: number
}

interface Attempt {
  fs: FileSystem
  by: string | undefined
  deadline: number
  level: number
}

const LAST_LEVEL = 3
const SLOW_MS = 5_000
const ABANDONED_MS = 10_000

/** The locks of this thread. All of it is synchronous, so a lock that names this thread and is not here is an older process's. */
const mine = new Set<string>()

function acquire(path: string, attempt: Attempt): Held {
  for (;;) {
    const created = create(path, attempt)
    if ('token' in created) return created
    const found = unlessPassing(() => readLock(path, attempt.fs))
    // Nobody could give it back while this thread waits for itself.
    if (found?.holder && mine.has(found.holder.token)) throw new LockHeld(path, found.holder)
    if (found !== null && mayBeStale(found) && removeIf(path, attempt, isStale)) continue
    if (performance.now() >= attempt.deadline) {
      if (found === null && isPassing(created.refused)) throw created.refused
      throw new LockHeld(path, found?.holder ?? null)
    }
    pause()
  }
}

/** Creates the lock file, unless there is one. */
function create(path: string, attempt: Attempt): Held | { refused: unknown } {
  const { fs } = attempt
  const isSlow = stopwatch(SLOW_MS)
  let fd: number
  try {
    fd = fs.openSync(path, 'wx', 0o600)
  } catch (refused) {
    if (errnoOf(refused) === 'EEXIST' || isPassing(refused)) return { refused }
    throw refused
  }
  const token = randomUUID()
  let changed: number
  try {
    writeAll(fs, fd, Buffer.from(`${JSON.stringify(holderHere(token, attempt.by))}\n`))
    changed = fs.fstatSync(fd).mtimeMs
  } catch (error) {
    if (!isSlow()) removeQuietly(fs, path)
    throw error
  } finally {
    closeQuietly(fs, fd)
  }
  if (isSlow()) {
    removeIf(path, attempt, (found) => found.holder?.token === token)
    return { refused: undefined }
  }
  mine.add(token)
  return { path, token, changed }
}

function release({ path, token }: Held, fs: FileSystem): void {
  mine.delete(token)
  // The work is done and recorded, so a lock that cannot be removed is no reason to say otherwise: it turns stale
  // when this process ends. On Windows another process reading the file can be in the way for a moment.
  for (let tries = 0; tries < 5; tries += 1) {
    try {
      if (readLock(path, fs)?.holder?.token === token) fs.unlinkSync(path)
      return
    } catch {
      pause()
    }
  }
}

/** Removes the lock file under the second lock, if it still is as `judge` wants it. Says whether it did. */
function removeIf(path: string, attempt: Attempt, judge: (found: Found, now: number) => boolean): boolean {
  if (attempt.level === LAST_LEVEL) return false
  const { fs } = attempt
  const second = acquire(`${path}.takeover`, { ...attempt, level: attempt.level + 1 })
  try {
    const removed = unlessPassing(() => {
      const found = readLock(path, fs)
      if (found === null || !judge(found, second.changed)) return false
      fs.unlinkSync(path)
      return true
    })
    return removed ?? false
  } finally {
    release(second, fs)
  }
}

function mayBeStale({ holder }: Found): boolean {
  return holder === null || isDead(holder)
}

function isStale({ holder, changed }: Found, now: number): boolean {
  return holder === null ? now - changed > ABANDONED_MS : isDead(holder)
}

function isDead(holder: Holder): boolean {
  const { pid, host, thread, token } = holder
  if (host !== hostname()) return false
  // After a restart, in a container above all, the same number may be ours now.
  if (pid === process.pid) return thread === threadId && !mine.has(token)
  return !isHolderAlive(holder)
}

function unlessPassing<T>(work: () => T): T | null {
  try {
    return work()
  } catch (error) {
    if (isPassing(error)) return null
    throw error
  }
}

/** Windows answers so while another process is just opening or removing the file. */
function isPassing(error: unknown): boolean {
  return process.platform === 'win32' && ['EPERM', 'EACCES', 'EBUSY'].includes(errnoOf(error) ?? '')
}

function pause(): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 2 + Math.random() * 18)
}

/** Both clocks, because the steady one may stand still while the computer sleeps. */
function stopwatch(limit: number): () => boolean {
  const [wall, steady] = [Date.now(), performance.now()]
  return () => Date.now() - wall > limit || performance.now() - steady > limit
}
