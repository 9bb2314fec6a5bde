import { resolve } from 'node:path'
import type { JobSummary } from '../session/jobs.ts'
import type { JobNumber } from '../session/scan.ts'
import type { Session } from '../session/session.ts'
import type { Entry } from '../session/stored-entry.ts'
import { hasJournal } from '../storage/job-folders.ts'
import { say } from '../words/cures.ts'
import { type Trouble, troubleText } from '../words/storage-troubles.ts'
import { told } from '../words/told.ts'
import { troubleOfRecord } from '../words/trouble-of.ts'
import type { Options } from './arguments.ts'
import { noteBrokenOff } from './broke-off.ts'
import { EXIT } from './exit-codes.ts'
import type { DiskShelf } from './job-shelf.ts'
import type { Around } from './perform-line.ts'
import { type Failure, wrongUse } from './result.ts'
import { troubleOf } from './trouble.ts'

/** An open job. */
export interface Open {
  ok: true
  path: string
  session: Session
  /** Set for the first line in a job of which the record had to be told that its work broke off. */
  noted?: Entry | null
}

/** Where commands are carried out: the jobs of a home, and the one that lines go to, opened once. */
export class Desk {
  readonly shelf: DiskShelf
  readonly options: Options
  readonly cwd: string
  readonly colour: boolean
  #open: Open | null = null

  constructor(shelf: DiskShelf, about: { options: Options; cwd: string; colour: boolean }) {
    this.shelf = shelf
    this.options = about.options
    this.cwd = about.cwd
    this.colour = about.colour
  }

  /** The job that lines go to: the one named with --job, else the one chosen last, else the only one. */
  current(): Open | Failure {
    const path = this.meant()
    if (typeof path !== 'string') return path
    if (this.#open?.path !== path) {
      const opened = this.open(path)
      if (!opened.ok) return opened
      this.#open = opened
      return { ...opened, noted: noteBrokenOff(opened.session, this.shelf.meanwhile(path)) }
    }
    try {
      // Others may have written since: a line is read in the light of what they did.
      this.#open.session.refresh()
      return this.#open
    } catch (error) {
      return troubleOf(error, path)
    }
  }

  /** The same, even one of which not a single entry can be read. */
  anyhow(): Open | Failure {
    const open = this.current()
    const path = this.meant()
    if (open.ok || typeof path !== 'string') return open
    try {
      return { ok: true, path, session: this.shelf.open(path) }
    } catch (error) {
      return troubleOf(error, path)
    }
  }

  /** The job that lines went to, if one is open. */
  get inHand(): Open | null {
    return this.#open
  }

  open(path: string): Open | Failure {
    try {
      const session = this.shelf.open(path)
      return session.entries().length > 0 ? { ok: true, path, session } : notLegible(session)
    } catch (error) {
      return troubleOf(error, path)
    }
  }

  /** The job at a path, which lines go to from now on. Throws what the disk throws. */
  opened(path: string): Open {
    this.#open = { ok: true, path, session: this.shelf.open(path) }
    return this.#open
  }

  /** The path of the job that a person means: by path, by number, by name. */
  find(asked: string): string | Failure {
    if (isPath(asked)) return jobAtPath(asked, this.cwd) ?? noSuchJob(asked, this.#names())
    if (/^0*[1-9]\d{0,2}$/.test(asked)) {
      const numbered = this.shelf
        .headers()
        .filter(({ header }) => header?.type === 'opened' && header.job.no === Number(asked))
      const [only, another] = numbered
      if (only && another) return ambiguous(asked, this.#summaries(numbered.map(({ path }) => path)))
      if (only) return only.path
    }
    const name = asked.trim().toLowerCase()
    const jobs = this.shelf.list()
    const exact = jobs.filter((job) => job.name.toLowerCase() === name)
    const called = exact.length > 0 ? exact : jobs.filter(({ folder }) => folder.toLowerCase() === name)
    const begun = called.length > 0 ? called : jobs.filter((job) => job.name.toLowerCase().startsWith(name))
    const [first, second] = begun
    if (first && second) return ambiguous(asked, begun)
    return first?.path ?? noSuchJob(asked, this.#names())
  }

  around(): Around {
    return {
      drawing: { colour: this.colour, invert: this.options.invert },
      otherJob: (no) => this.#otherJob(no),
    }
  }

  /** The path of the job that lines go to: nothing of it is opened. */
  meant(): string | Failure {
    return this.options.job === undefined ? this.#chosen() : this.find(this.options.job)
  }

  #chosen(): string | Failure {
    const chosen = this.shelf.chosen()
    if (chosen !== null) return chosen
    const jobs = this.shelf.headers()
    const [only] = jobs
    if (jobs.length === 1 && only) return only.path
    return jobs.length === 0 ? noJobYet() : noneChosen(this.#names())
  }

  // A job may have been renamed since its first entry, so its name is looked up where it is needed.
  #otherJob(no: number): JobNumber | null {
    const job = this.shelf.headers().find(({ header }) => header?.type === 'opened' && header.job.no === no)
    if (!job) return null
    const opened = this.open(job.path)
    return opened.ok ? { no, name: opened.session.state.job.name } : { no, name: job.folder }
  }

  #summaries(paths: readonly string[]): JobSummary[] {
    return this.shelf.list().filter(({ path }) => paths.includes(path))
  }

  #names(): string[] {
    return this.shelf
      .list()
      .filter(({ archived }) => !archived)
      .map(({ no, name }) => `${no ?? '-'}  ${name}`)
  }
}

/** The folder of a job that is named by its path, if that is what was asked for and there is one. */
export function jobAtPath(asked: string, cwd: string): string | null {
  const path = resolve(cwd, asked)
  return isPath(asked) && hasJournal(path) ? path : null
}

/** Not even the first entry could be read: there is no job to show. */
function notLegible(session: Session): Failure {
  const trouble: Trouble = troubleOfRecord(session) ?? { kind: 'empty', path: session.store.path }
  return {
    ok: false,
    exit: EXIT.notRecorded,
    code: trouble.kind,
    told: troubleText(trouble),
    facts: { trouble },
  }
}

function isPath(asked: string): boolean {
  return /[/\\]|^\.\.?$/.test(asked)
}

function noJobYet(): Failure {
  const cure =
    '"putback new job NAME" makes one, "putback practice" one to learn with, "putback demo" one to play with'
  return wrongUse('no-job', told('there is no job yet', cure), EXIT.noJob)
}

function noneChosen(names: string[]): Failure {
  return wrongUse(
    'no-job-chosen',
    told('no job is chosen', '"putback use JOB", or "--job JOB" with the command', names),
    EXIT.noJob,
  )
}

function noSuchJob(asked: string, names: string[]): Failure {
  return wrongUse(
    'no-such-job',
    told(`there is no job '${asked}'`, '"putback jobs" lists them', names),
    EXIT.noJob,
  )
}

/** Several answer. A copy of a job has the number of the first: only the path tells these apart. */
function ambiguous(asked: string, jobs: readonly JobSummary[]): Failure {
  const areNumbered = new Set(jobs.map(({ no }) => no)).size === jobs.length
  const names = jobs.map(({ no, name, path }) =>
    areNumbered ? `${no ?? '-'}  ${name}` : `${path}: job ${no ?? '-'}, ${name}`,
  )
  const isOneJob = jobs.every(({ id }) => id !== null && id === jobs[0]?.id)
  const cure = areNumbered
    ? 'say its number'
    : isOneJob
      ? `say its path; they are copies of one job, and in either ${say('merge PATH')} of the other brings both together`
      : 'say its path'
  return wrongUse('which-job', told(`several jobs answer to '${asked}'`, cure, names), EXIT.noJob)
}
