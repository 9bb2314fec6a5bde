import type { Phase } from '../plan/phase.ts'
import type { HeaderProblem } from '../storage/job-folders.ts'
import type { JournalProblem } from '../storage/journal/journal-file.ts'
import type { Presence } from '../storage/lock/presence.ts'
import type { Session } from './session.ts'

/** What is wrong with a job's record; `law` when the entry of that number does not follow from those before it. */
export type JobProblem = HeaderProblem | JournalProblem | { kind: 'law'; entry: number }

/** One job as a list shows it. What could not be read is null, and `problem` says why. */
export interface JobSummary {
  /** The name of its folder in the home. */
  folder: string
  path: string
  /** The id of its first entry: a copy of a job has the same. */
  id: string | null
  no: number | null
  name: string
  machine: string
  archived: boolean
  phase: Phase | null
  problem: JobProblem | null
}

/** The folders of the other jobs in a list that are copies of one and the same job, each gone on with by itself. */
export function copiesOf({ id, path }: JobSummary, jobs: readonly JobSummary[]): string[] {
  return id === null
    ? []
    : jobs.filter((job) => job.id === id && job.path !== path).map(({ folder }) => folder)
}

export interface NewJob {
  name: string
  machine: string
  units: 'metric' | 'us'
  /** Of an invented machine, to learn with. */
  practice?: true | undefined
}

/**
 * The jobs of one home, as the command line hands them to the screens. Whatever goes wrong with the disk is
 * thrown: NotRecorded, LockHeld, or the system's error.
 */
export interface JobShelf {
  /** The folder that the jobs lie in, absolute. */
  readonly home: string
  /** Every job of the home, archived ones too, by folder name. Reads each journal whole. */
  list(): JobSummary[]
  /**
   * Opens a job. What is good of a damaged record is there to read; `session.store.problem` or `session.unlawful`
   * says what is wrong, and nothing can be written.
   */
  open(path: string): Session
  /** Makes it known that this program works in a job, until it leaves. */
  enter(path: string): Presence
  /** Makes a job under the next free number, and chooses it. Answers its path. Throws NumbersUsedUp. */
  create(job: NewJob): string
  /** Makes a job from the demo, up to the middle of its build-up, and chooses it. Answers its path. */
  addDemo(): string
  /** Makes a practice job, with nothing off yet, and chooses it. Answers its path. */
  addPractice(): string
  /** The path of the job that commands go to when none is named. */
  chosen(): string | null
  choose(path: string): void
  /** Whether the bell is wanted in this home. */
  hasSound(): boolean
  /** Remembers whether it is. */
  setSound(isWanted: boolean): void
}

/** Every job number from 1 to 999 is taken in this home: a label code has no room for more. */
export class NumbersUsedUp extends Error {
  override readonly name = 'NumbersUsedUp'
}

/** Not even the first entry of a job is legible: there is nothing to show, and nothing may be written. */
export class NoFirstEntry extends Error {
  override readonly name = 'NoFirstEntry'
  readonly session: Session
  constructor(session: Session) {
    super(`no first entry in ${session.store.path}`)
    this.session = session
  }
}
