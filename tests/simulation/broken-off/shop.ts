import { dirname } from 'node:path'
import type { Desk } from '../../../src/cli/desk.ts'
import { DiskShelf } from '../../../src/cli/job-shelf.ts'
import { perform } from '../../../src/cli/perform.ts'
import type { Result } from '../../../src/cli/result.ts'
import { parseEntry } from '../../../src/journal/entry.ts'
import type { Session } from '../../../src/session/session.ts'
import { openJournal } from '../../../src/storage/journal/open-journal.ts'
import type { Presence } from '../../../src/storage/lock/presence.ts'
import { keyReader } from '../../../src/ui/controls/line/key-reader.ts'
import { Desk as Screens } from '../../../src/ui/desk/desk.ts'
import type { Chance } from '../../support/damage/chance.ts'
import { type Cut, Disk } from './disk.ts'
import { lineDesk, OPTIONS } from './line-desk.ts'

const JOB = '/shop/job'
const MINUTE = 60_000

/** A job on a disk in memory, worked on by the command line or on the screens, that may end at any moment. */
export class Shop {
  readonly disk = new Disk()
  /** The ids of the entries that the program said were recorded. */
  readonly acknowledged: string[] = []
  #now = Date.UTC(2030, 0, 1, 8)
  #booted = Date.UTC(2029, 0, 1)
  #by = 'Anna'
  #lines: Desk | null = null
  #screens: Screens | null = null

  constructor(name: string) {
    this.#shelf().open(JOB).send({ do: 'open-job', no: 1, name, machine: name, units: 'metric' })
    this.#learn()
  }

  get by(): string {
    return this.#by
  }

  /** The job as the program in front of the mechanic has it. */
  get session(): Session {
    if (this.#screens?.session) return this.#screens.session
    const open = this.#desk().current()
    if (!open.ok) throw new Error(`the job does not open: ${open.told.what}`)
    return open.session
  }

  /** A line on the command line, which is a program of its own each time; here it opens the job where it is not open. */
  say(line: string): Result {
    this.wait(0.25)
    const result = perform(this.#desk(), [line], OPTIONS)
    if ('errand' in result) throw new Error(`no errand was meant: ${line}`)
    if (!this.disk.isDead) this.#learn(result.entries?.map(({ id }) => id))
    return result
  }

  wait(minutes: number): void {
    this.#now += minutes * MINUTE
  }

  /** Whoever works from now on; each line on the command line says so by itself. */
  handTo(by: string): void {
    if (by === this.#by) return
    this.#by = by
    this.#lines = null
  }

  /** The program is gone, and nobody said a word. */
  vanish(): void {
    this.#screens?.close()
    this.#screens = null
    this.#lines = null
  }

  cutAtNextWrite(cut: Cut): void {
    this.disk.cutAtNextWrite(cut)
  }

  /** The computer is on again after the power went. */
  restart(chance: Chance): void {
    this.vanish()
    this.disk.restart(chance)
  }

  /** When the computer was started, for who asks whether it went off meanwhile. */
  startedNow(): void {
    this.#booted = this.#now
  }

  /** The screens of the job, without a terminal. */
  screens(): ScreensInUse {
    this.#lines = null
    const screens = new Screens({
      shelf: this.#shelf(),
      colour: false,
      now: () => new Date(this.#now),
      errands: { run: () => Promise.reject(new Error('no errands here')) },
    })
    screens.resize({ width: 100, height: 40 })
    this.#screens = screens
    this.#learn()
    const reader = keyReader()
    return {
      screens,
      type: (text) => {
        this.wait(0.1)
        for (const pressed of [...reader.push(text), ...reader.flush()]) screens.press(pressed)
        if (!this.disk.isDead) this.#learn()
      },
    }
  }

  /** The record as the disk has it, read by nobody who writes: entries, and what is wrong with it. */
  lying() {
    const store = openJournal(JOB, { parse: parseEntry, readOnly: true, fs: this.disk.fs })
    return { ids: store.entries().map(({ id }) => id), problem: store.problem }
  }

  #desk(): Desk {
    this.#lines ??= lineDesk(this.#shelf(), this.#by)
    return this.#lines
  }

  #shelf(): MemoryShelf {
    return new MemoryShelf(dirname(JOB), {
      now: () => new Date(this.#now),
      booted: () => new Date(this.#booted),
      by: this.#by,
      fs: this.disk.fs,
    })
  }

  /** What the program holds for recorded, it has said so; `ids`: of what was said just now. */
  #learn(ids?: readonly string[]): void {
    const said =
      ids ??
      this.session
        .entries()
        .slice(this.acknowledged.length)
        .map(({ id }) => id)
    this.acknowledged.push(...said)
  }
}

export interface ScreensInUse {
  screens: Screens
  type(text: string): void
}

/** The one job of a home that is on no disk. */
class MemoryShelf extends DiskShelf {
  override list() {
    return []
  }

  override headers() {
    return []
  }

  override chosen(): string {
    return JOB
  }

  override choose(): void {}

  override enter(): Presence {
    return { othersHere: () => false, othersDied: () => false, leave: () => {} }
  }

  override hasSound(): boolean {
    return false
  }
}
