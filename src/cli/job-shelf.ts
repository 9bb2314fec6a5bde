import { uptime } from 'node:os'
import { basename, dirname, join, resolve } from 'node:path'
import { type JobShelf, type JobSummary, type NewJob, NumbersUsedUp } from '../session/jobs.ts'
import { Session, type SessionOptions } from '../session/session.ts'
import { type Entry, parseEntry } from '../session/stored-entry.ts'
import { cardOf } from '../session/views.ts'
import { choose, chosen } from '../storage/chosen-job.ts'
import { errnoOf, type FileSystem } from '../storage/files/file-system.ts'
import {
  createJob,
  discardJob,
  type HeaderProblem,
  JOBS_LOCK_NAME,
  type JobFolder,
  listJobs,
  makeHome,
} from '../storage/job-folders.ts'
import { notRecorded } from '../storage/journal/not-recorded.ts'
import { openJournal } from '../storage/journal/open-journal.ts'
import { withLock } from '../storage/lock/lock.ts'
import { enterJob, type Presence, somebodyHere } from '../storage/lock/presence.ts'
import { soundWanted, wantSound } from '../storage/sound-setting.ts'
import type { Meanwhile } from './broke-off.ts'
import { addDemoJob } from './demo-job.ts'

interface ShelfOptions extends SessionOptions {
  /** What the jobs are read and written through. */
  fs?: FileSystem | undefined
  /** How long to wait for another program that is writing, in milliseconds. */
  lockLimit?: number | undefined
  /** When this computer was started. */
  booted?: (() => Date) | undefined
}

/** The jobs of a home on the disk. */
export class DiskShelf implements JobShelf {
  readonly home: string
  readonly #options: ShelfOptions

  constructor(home: string, options: ShelfOptions = {}) {
    this.home = home
    this.#options = options
  }

  list(): JobSummary[] {
    return this.headers().map((job) => this.#summary(job))
  }

  /** What the first entry of each job says: enough for its number, and quick. */
  headers(): JobFolder<Entry>[] {
    return listJobs(this.home, parseEntry)
  }

  open(path: string): Session {
    const { by, fs, lockLimit } = this.#options
    return new Session(openJournal(path, { parse: parseEntry, by, fs, lockLimit }), this.#options)
  }

  enter(path: string): Presence {
    return enterJob(path)
  }

  /** What is known of the time since the last entry of a job, for who wonders whether its work goes on. */
  meanwhile(path: string): Meanwhile {
    const { now = () => new Date(), booted = bootTime } = this.#options
    return { now: now(), booted: booted(), othersHere: somebodyHere(path) }
  }

  create(job: NewJob): string {
    const path = this.#make(job)
    this.choose(path)
    return path
  }

  #make({ name, machine, units, practice }: NewJob): string {
    const { fs, lockLimit } = this.#options
    try {
      makeHome(this.home, fs)
      // Two that are made at the same moment must not get the same number: it stands on every label.
      return withLock(join(this.home, JOBS_LOCK_NAME), { fs, limit: lockLimit }, () => {
        const no = freeNumber(this.headers())
        const { path } = createJob(this.home, name, fs)
        try {
          const outcome = this.open(path).send({ do: 'open-job', no, name, machine, units, practice })
          if (outcome.kind === 'not-recorded') throw outcome.error
          if (outcome.kind === 'refused') throw new Error(`a new job was refused: ${outcome.refusal.code}`)
        } catch (error) {
          // A folder without a job in it would stand in the list, and the next one of that name beside it.
          discardJob(path, fs)
          throw error
        }
        return path
      })
    } catch (error) {
      throw notRecorded(error, this.home)
    }
  }

  addDemo(): string {
    return addDemoJob(this, { whole: false })
  }

  addPractice(): string {
    return this.create(PRACTICE_JOB)
  }

  chosen(): string | null {
    const folder = chosen(this.home)
    return folder === null ? null : join(this.home, folder)
  }

  choose(path: string): void {
    if (resolve(dirname(path)) !== resolve(this.home))
      throw new RangeError(`not a job of ${this.home}: ${path}`)
    choose(this.home, basename(path), this.#options.fs)
  }

  hasSound(): boolean {
    return soundWanted(this.home)
  }

  setSound(isWanted: boolean): void {
    wantSound(this.home, isWanted, this.#options.fs)
  }

  /** A job whose file cannot be read does not keep the others from being listed. */
  #lookInto(path: string): Session | Extract<HeaderProblem, { kind: 'unreadable' }> {
    try {
      return new Session(openJournal(path, { parse: parseEntry, readOnly: true }))
    } catch (error) {
      const code = errnoOf(error)
      if (code === undefined) throw error
      return { kind: 'unreadable', code }
    }
  }

  #summary({ folder, path, header, problem }: JobFolder<Entry>): JobSummary {
    const opened = header?.type === 'opened' ? header.job : null
    const base = {
      folder,
      path,
      id: header?.id ?? null,
      no: opened?.no ?? null,
      name: opened?.name ?? folder,
      machine: opened?.machine ?? '',
    }
    if (problem?.kind === 'empty' || problem?.kind === 'unreadable' || !opened) {
      return { ...base, archived: false, phase: null, problem }
    }
    const session = this.#lookInto(path)
    if (!(session instanceof Session)) return { ...base, archived: false, phase: null, problem: session }
    const { state, problem: found } = session
    const { name, machine, archived } = state.job
    return {
      ...base,
      name,
      machine,
      archived,
      phase: cardOf(session).phase,
      problem: found,
    }
  }
}

function bootTime(): Date {
  return new Date(Date.now() - uptime() * 1000)
}

/** What is taken apart to learn how: nobody has this pump. */
const PRACTICE_JOB: NewJob = {
  name: 'practice pump',
  machine: 'an invented hand pump',
  units: 'metric',
  practice: true,
}

function freeNumber(jobs: readonly JobFolder<Entry>[]): number {
  const taken = new Set(jobs.map(({ header }) => (header?.type === 'opened' ? header.job.no : 0)))
  for (let no = 1; no <= 999; no += 1) if (!taken.has(no)) return no
  throw new NumbersUsedUp(`all 999 job numbers are taken`)
}
