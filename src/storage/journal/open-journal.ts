import { join } from 'node:path'
import { LowSync } from 'lowdb'
import { type FileSystem, nodeFileSystem } from '../files/file-system.ts'
import { LockHeld, withLock } from '../lock/lock.ts'
import {
  JOURNAL_LOCK_NAME,
  JOURNAL_NAME,
  type Journal,
  type JournalFile,
  type JournalProblem,
  openJournalFile,
  stampOf,
} from './journal-file.ts'
import type { Damaged, Newer, Numbered } from './line.ts'
import { NotRecorded, notRecorded } from './not-recorded.ts'
import { type SetAside, setAsideTornEnd } from './recover.ts'

export interface OpenOptions<E> {
  /** Throws on a shape it does not accept. */
  parse: (raw: unknown) => E
  /** Only look: take no lock, change no file. */
  readOnly?: boolean | undefined
  /** How long `append` waits for another process, in milliseconds. */
  lockLimit?: number | undefined
  /** Who works here, to be named to those who wait for this one. */
  by?: string | undefined
  fs?: FileSystem | undefined
}

export type ReadOnlyReason = { kind: 'asked' } | Damaged | Newer | { kind: 'replaced' }

/**
 * A job's journal, shared with whoever else has it open. Each entry is handed over once: by `entries` right after
 * opening, and from then on by `refresh`, by the argument of `decide`, or by what `append` returns.
 */
export interface JournalStore<E> {
  readonly path: string
  /** All entries known, in order. The array grows; the entries are frozen. */
  entries(): readonly E[]
  /** What is wrong with the file; the entries before it are good. */
  readonly problem: JournalProblem | null
  /** Torn ends that were moved to files of their own, since opening. */
  readonly setAside: readonly SetAside[]
  readonly readOnly: ReadOnlyReason | null
  /** Reads what others wrote since, and returns it. Throws the system's error when the file cannot be read. */
  refresh(): readonly E[]
  /**
   * Under the lock: reads what others wrote, hands it to `decide`, and records the entries that this returns, null for
   * nothing. Returns them as recorded, once they are on the disk, and with them all that stands before; where the list
   * is empty, that alone.
   * Throws LockHeld, or NotRecorded; after both everything recorded before still stands.
   */
  append(decide: (fresh: readonly E[]) => readonly E[] | null): readonly E[]
  /** Calls `listener` when the file changed by another's hand, until the returned function is called. */
  watch(listener: () => void): () => void
}

/**
 * Opens the journal in a job's folder and reads it. A torn end is set aside, if the lock can be had and the disk
 * written; else it stays, as the problem, for the next append to set aside. Throws the system's error when the file
 * cannot be read; a missing one is an empty journal.
 */
export function openJournal<E extends Numbered>(folder: string, options: OpenOptions<E>): JournalStore<E> {
  return new LockedJournal(folder, options)
}

const POLL_MS = 250

class LockedJournal<E extends Numbered> implements JournalStore<E> {
  readonly path: string
  readonly setAside: SetAside[] = []
  readonly #lockPath: string
  readonly #options: {
    lockLimit: number | undefined
    by: string | undefined
    fs: FileSystem
    onlyLook: boolean
  }
  readonly #file: JournalFile<E>
  readonly #db: LowSync<Journal<E>>
  #handedOver = 0
  #tornEndStays = false
  #appending = false

  constructor(
    folder: string,
    { parse, readOnly = false, lockLimit, by, fs = nodeFileSystem }: OpenOptions<E>,
  ) {
    this.path = join(folder, JOURNAL_NAME)
    this.#lockPath = join(folder, JOURNAL_LOCK_NAME)
    this.#options = { lockLimit, by, fs, onlyLook: readOnly }
    this.#file = openJournalFile(this.path, { parse, fs })
    this.#db = new LowSync(this.#file, { entries: [] })
    this.#db.read()
    if (this.#file.problem !== null) this.#lookAgainUnderLock()
    this.#takeFresh()
  }

  entries(): readonly E[] {
    return this.#db.data.entries
  }

  get problem(): JournalProblem | null {
    const { problem } = this.#file
    // Without the lock, a torn end is most likely a line that is being written.
    return problem?.kind === 'torn' && !this.#tornEndStays ? null : problem
  }

  get readOnly(): ReadOnlyReason | null {
    const { problem } = this.#file
    if (problem !== null && problem.kind !== 'torn') return problem
    return this.#options.onlyLook ? { kind: 'asked' } : null
  }

  refresh(): readonly E[] {
    this.#db.read()
    this.#tornEndStays &&= this.#file.problem?.kind === 'torn'
    return this.#takeFresh()
  }

  append(decide: (fresh: readonly E[]) => readonly E[] | null): readonly E[] {
    if (this.#appending) throw new Error('append was called from within append')
    if (this.#options.onlyLook) throw new NotRecorded('read-only', this.path)
    this.#appending = true
    let hasLock = false
    try {
      return this.#underLock(() => {
        hasLock = true
        this.#readAndMend()
        if (this.readOnly !== null)
          throw new NotRecorded(this.readOnly.kind, this.path, { cause: this.readOnly })
        return this.#record(decide(this.#takeFresh()))
      })
    } catch (error) {
      throw hasLock ? error : notRecorded(error, isAbout(error, this.#lockPath) ? this.#lockPath : this.path)
    } finally {
      this.#appending = false
    }
  }

  watch(listener: () => void): () => void {
    let last = this.#file.stamp
    const timer = setInterval(() => {
      const now = this.#stampNow()
      const isNews = now !== last && now !== this.#file.stamp
      last = now
      if (isNews) listener()
    }, POLL_MS)
    timer.unref()
    return () => clearInterval(timer)
  }

  #record(decided: readonly E[] | null): readonly E[] {
    const before = this.#handedOver
    if (decided === null) return []
    if (decided.length === 0) {
      this.#file.flush()
      return []
    }
    const { entries } = this.#db.data
    for (const entry of decided) entries.push(entry)
    this.#db.write()
    this.#takeFresh()
    return entries.slice(before)
  }

  #readAndMend(): void {
    try {
      this.#db.read()
      this.#tornEndStays = this.#file.problem?.kind === 'torn'
      if (!this.#tornEndStays) return
      const moved = setAsideTornEnd(this.path, this.#file.goodBytes, this.#options.fs)
      if (moved !== null) this.setAside.push(moved)
      this.#db.read()
      this.#tornEndStays = false
    } catch (error) {
      throw notRecorded(error, this.path)
    }
  }

  /** What looks wrong may be a line that another process is writing, until the lock says that none is. */
  #lookAgainUnderLock(): void {
    this.#tornEndStays = this.#file.problem?.kind === 'torn'
    if (this.#options.onlyLook) return
    try {
      this.#underLock(() => this.#readAndMend())
    } catch (error) {
      if (!(error instanceof LockHeld || notRecorded(error, this.path) instanceof NotRecorded)) throw error
    }
  }

  #underLock<T>(work: () => T): T {
    const { lockLimit, by, fs } = this.#options
    return withLock(this.#lockPath, { limit: lockLimit, by, fs }, work)
  }

  #takeFresh(): readonly E[] {
    const { entries } = this.#db.data
    const fresh = entries.slice(this.#handedOver)
    this.#handedOver = entries.length
    return fresh
  }

  #stampNow(): string {
    try {
      return stampOf(this.#options.fs.statSync(this.path))
    } catch {
      return ''
    }
  }
}

/** Whether the system names that file: to look at the journal would not help where the lock is in the way. */
function isAbout(error: unknown, path: string): boolean {
  return error instanceof Error && 'path' in error && error.path === path
}
