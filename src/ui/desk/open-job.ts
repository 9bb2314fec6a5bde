import { type JobShelf, type JobSummary, type NewJob, NoFirstEntry } from '../../session/jobs.ts'
import type { Session } from '../../session/session.ts'
import { brokenOff } from '../../session/views.ts'
import { isUnderWay } from '../model/scene.ts'

/** The jobs of a home and the one that is open, followed while others write into it. */
export class OpenJob {
  readonly #shelf: JobShelf
  readonly #onNews: (refresh: () => void) => void
  #jobs: readonly JobSummary[] | null = null
  #isTelling = false
  #session: Session | null = null
  #unfollow: () => void = () => {}
  #othersHere: () => boolean = () => false
  #othersDied: () => boolean = () => false

  /** `onNews` is told when the file changed, and calls what it is given to read it, which may throw. */
  constructor(shelf: JobShelf, onNews: (refresh: () => void) => void) {
    this.#shelf = shelf
    this.#onNews = onNews
  }

  get session(): Session | null {
    return this.#session
  }

  /** Read from the disk when something asks for them: each job is opened for it. */
  get jobs(): readonly JobSummary[] {
    this.#jobs ??= this.#list()
    return this.#jobs
  }

  get home(): string {
    return this.#shelf.home
  }

  /** The list is read anew when it is next asked for. */
  forgetList(): void {
    // Not because it could not be read: then each frame would ask for it again.
    if (!this.#isTelling) this.#jobs = null
  }

  /** The job that opens by itself: the one chosen last, or the only one. */
  first(): string | null {
    const only = () => (this.jobs.length === 1 ? this.jobs[0]?.path : undefined)
    return this.#shelf.chosen() ?? only() ?? null
  }

  /** Opens a job, and notes that work was broken off where it ended without a word: a bolt may be half turned. */
  open(path: string): Session {
    const session = this.#shelf.open(path)
    if (session.entries().length === 0) throw new NoFirstEntry(session)
    this.close()
    this.#session = session
    const stopWatching = session.store.watch(() => this.#onNews(() => session.refresh()))
    const stopListening = session.subscribe(() => this.#onNews(() => {}))
    const presence = this.#shelf.enter(path)
    this.#othersHere = () => presence.othersHere()
    this.#othersDied = () => presence.othersDied()
    this.#unfollow = () => {
      stopWatching()
      stopListening()
      presence.leave()
    }
    const canWrite = session.store.readOnly === null && session.unlawful === null
    // Where another program has the job open, somebody is doing that work right now.
    if (canWrite && brokenOff(session.state) && !presence.othersHere())
      session.send({ do: 'stop', abrupt: true, note: '' })
    // Whoever died before this was opened is accounted for by that.
    presence.othersDied()
    return session
  }

  /**
   * Notes that work was broken off where another program died in the middle of it: its bolt may be half turned, and would be
   * the next one here. Answers whether that was noted.
   */
  noteDied(): boolean {
    const session = this.#session
    if (!session || !this.#othersDied() || session.unlawful !== null) return false
    session.refresh()
    if (!brokenOff(session.state) || this.#othersHere()) return false
    return session.send({ do: 'stop', abrupt: true, note: '' }).kind === 'recorded'
  }

  /** Remembers the open job for the next start. */
  choose(path: string): void {
    if (this.#shelf.chosen() !== path) this.#shelf.choose(path)
    this.forgetList()
  }

  create(job: NewJob): string {
    return this.#shelf.create(job)
  }

  addDemo(): string {
    return this.#shelf.addDemo()
  }

  addPractice(): string {
    return this.#shelf.addPractice()
  }

  /** Notes that work breaks off here. When the disk refuses, the next start notes it. */
  breakOff(): void {
    const session = this.#session
    if (session && isUnderWay(session.state) && !this.#othersHere())
      session.send({ do: 'stop', abrupt: true, note: '' })
  }

  /** Leaves the job to others. */
  close(): void {
    this.#unfollow()
    this.#unfollow = () => {}
  }

  /** Asked for in the middle of drawing: what goes wrong is told after that. */
  #list(): readonly JobSummary[] {
    try {
      return this.#shelf.list()
    } catch (error) {
      queueMicrotask(() => this.#tell(error))
      return []
    }
  }

  #tell(error: unknown): void {
    this.#isTelling = true
    try {
      this.#onNews(() => {
        throw error
      })
    } finally {
      this.#isTelling = false
    }
  }
}
