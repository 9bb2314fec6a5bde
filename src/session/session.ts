import { randomUUID } from 'node:crypto'
import type { Command } from '../journal/command.ts'
import { decide } from '../journal/decide/decide.ts'
import { ENTRY_VERSION, type Entry, type EntryBody } from '../journal/entry.ts'
import { foldOn, UnlawfulEntry } from '../journal/fold.ts'
import { lawfulPart } from '../journal/lawful-part.ts'
import type { Refusal } from '../journal/refusal.ts'
import { emptyState, type State } from '../journal/state.ts'
import type { Clock } from '../plan/facts.ts'
import { Gates } from '../plan/gates.ts'
import { wholeSecond } from '../plan/whole-second.ts'
import type { JournalStore } from '../storage/journal/open-journal.ts'
import type { JobProblem } from './jobs.ts'
import { turningPoints } from './timers.ts'
import { withEntryMeant } from './written-since.ts'

/** What came of a command. `not-recorded`: decided, but the disk would not take it; nothing has changed. */
export type Outcome =
  | { kind: 'recorded'; entry: Entry }
  | { kind: 'refused'; refusal: Refusal }
  | { kind: 'not-recorded'; error: Error }

export interface SessionOptions {
  /** The time of an entry. */
  now?: (() => Date) | undefined
  /** Who works here, where the user has said so. */
  by?: string | undefined
}

/** What entries are made on: all that the journal holds, the time, and what makes an entry of its facts. */
export interface WritingNow {
  entries: readonly Entry[]
  clock: Clock
  seal(body: EntryBody, n: number): Entry
}

/** An open job: its folded state, and the one way to change it. CLI and screens both stand on this. */
export class Session {
  readonly #store: JournalStore<Entry>
  readonly #now: () => Date
  readonly #by: string | undefined
  readonly #listeners = new Set<() => void>()
  #state: State = emptyState()
  #gates: Gates | null = null
  #version = 0
  readonly #fromElsewhere = new Set<number>()

  #unlawful: UnlawfulEntry | null = null

  /** Reads the journal and folds it, as far as its entries are lawful. */
  constructor(store: JournalStore<Entry>, { now = () => new Date(), by }: SessionOptions = {}) {
    this.#store = store
    this.#now = now
    this.#by = by
    this.#take(store.entries())
  }

  get state(): State {
    return this.#state
  }

  /** Changes whenever the state does: the state itself is changed in place. */
  get version(): number {
    return this.#version
  }

  /** The first entry that breaks a law, if one does: the state stands before it, and nothing more is written. */
  get unlawful(): UnlawfulEntry | null {
    return this.#unlawful
  }

  /** What ends the record before the journal ends, the first of several; null where it was read whole. */
  get problem(): JobProblem | null {
    const { problem } = this.#store
    if (this.#unlawful === null || problem?.kind === 'replaced') return problem
    return { kind: 'law', entry: this.#unlawful.n }
  }

  get store(): JournalStore<Entry> {
    return this.#store
  }

  entries(): readonly Entry[] {
    return this.#store.entries()
  }

  /** Whether another program wrote an entry while the job was open here. */
  isFromElsewhere(n: number): boolean {
    return this.#fromElsewhere.has(n)
  }

  /** The gates of the plan as they stand now, worked out once for each state. */
  gates(): Gates {
    const clock = this.#clock()
    if (this.#gates === null || isOvertaken(this.#state, this.#gates.facts.clock, clock))
      this.#gates = new Gates({ ...this.#state, clock })
    return this.#gates
  }

  /** The state as it is asked now: the same, with the time and the day of this moment. */
  stateNow(): State {
    return { ...this.#state, clock: this.#clock() }
  }

  #clock(at = this.#now()): Clock {
    return { at: wholeSecond(at), today: dayOf(at), by: this.#by }
  }

  /**
   * Decides a command on what the journal holds at this moment, and appends its entry. The state changes only
   * after the entry is on the disk.
   */
  send(command: Command): Outcome {
    if (this.#unlawful) return { kind: 'not-recorded', error: this.#unlawful }
    let refusal: Refusal | null = null
    let written: readonly Entry[]
    try {
      written = this.#store.append((fresh) => {
        this.#takeFromElsewhere(fresh)
        if (this.#unlawful) throw this.#unlawful
        const at = this.#now()
        const decision = decide(this.#state, command, this.#clock(at))
        if (decision.ok) return [this.#entry(decision.body, at)]
        refusal = withEntryMeant(decision.refusal, this.#store.entries(), this.#state.inForce)
        return null
      })
    } catch (error) {
      if (!(error instanceof Error)) throw error
      return { kind: 'not-recorded', error }
    }
    const entry = written.at(-1)
    if (!entry) return { kind: 'refused', refusal: refusal as unknown as Refusal }
    this.#take(written)
    return { kind: 'recorded', entry }
  }

  /** What a command would come to on the state as it is known here. Nothing is written. */
  foresee(command: Command): ReturnType<typeof decide> {
    return decide(this.#state, command, this.#clock())
  }

  /**
   * Appends several entries in one go, all or none of them, made on what the journal holds at this moment. They must be
   * lawful: nothing is decided here. Answers none where none are made; where the list is empty, what others wrote is on
   * the disk all the same.
   */
  writeTogether(
    make: (now: WritingNow) => readonly Entry[] | null,
  ): { kind: 'recorded'; entries: readonly Entry[] } | { kind: 'not-recorded'; error: Error } {
    if (this.#unlawful) return { kind: 'not-recorded', error: this.#unlawful }
    try {
      const entries = this.#store.append((fresh) => {
        this.#takeFromElsewhere(fresh)
        if (this.#unlawful) throw this.#unlawful
        const at = this.#now()
        const seal = (body: EntryBody, n: number) => this.#entry(body, at, n)
        return make({ entries: this.#store.entries(), clock: this.#clock(at), seal })
      })
      this.#take(entries)
      return { kind: 'recorded', entries }
    } catch (error) {
      if (!(error instanceof Error)) throw error
      return { kind: 'not-recorded', error }
    }
  }

  /** Reads what others have written since. Answers whether there was anything. */
  refresh(): boolean {
    const fresh = this.#store.refresh()
    this.#takeFromElsewhere(fresh)
    return fresh.length > 0
  }

  /** Calls `listener` whenever the state has changed. Returns the way to stop it. */
  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  #entry(body: EntryBody, at: Date, n = this.#state.seq + 1): Entry {
    const header = {
      v: ENTRY_VERSION,
      n,
      at: at.toISOString(),
      id: randomUUID(),
    }
    return { ...header, ...(this.#by === undefined ? {} : { by: this.#by }), ...body }
  }

  #takeFromElsewhere(fresh: readonly Entry[]): void {
    for (const { n } of fresh) this.#fromElsewhere.add(n)
    this.#take(fresh)
  }

  #take(fresh: readonly Entry[]): void {
    if (fresh.length === 0 || this.#unlawful) return
    try {
      this.#state = foldOn(this.#state, this.#store.entries(), fresh)
    } catch (error) {
      if (!(error instanceof UnlawfulEntry)) throw error
      const { state, unlawful } = lawfulPart(this.#store.entries().slice(0, error.n - 1))
      this.#state = state
      this.#unlawful = unlawful ?? error
    }
    this.#gates = null
    this.#version += 1
    for (const listener of this.#listeners) listener()
  }
}

/** What sets lets go at a minute of its own, without an entry: whether one of these minutes lies between two times. */
function isOvertaken(state: State, before: Clock, now: Clock): boolean {
  if (before.today !== now.today) return true
  const [from, to] = before.at < now.at ? [before.at, now.at] : [now.at, before.at]
  return turningPoints(state).some((at) => at > from && at <= to)
}

/** The day where the user is. */
function dayOf(at: Date): string {
  const two = (part: number) => String(part).padStart(2, '0')
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`
}
