import { cpSync } from 'node:fs'
import { join } from 'node:path'
import { expect } from 'vitest'
import { addDemoJob } from '../../../src/cli/demo-job.ts'
import { DiskShelf } from '../../../src/cli/job-shelf.ts'
import { fold } from '../../../src/journal/fold.ts'
import { auditLedger } from '../../../src/ledger/laws.ts'
import type { Errands } from '../../../src/session/errands.ts'
import { Session } from '../../../src/session/session.ts'
import { parseEntry } from '../../../src/session/stored-entry.ts'
import { nodeFileSystem } from '../../../src/storage/files/file-system.ts'
import { openJournal } from '../../../src/storage/journal/open-journal.ts'
import { keyReader } from '../../../src/ui/controls/line/key-reader.ts'
import { Desk } from '../../../src/ui/desk/desk.ts'
import { type Size, SMALLEST } from '../../../src/ui/layout.ts'
import { frameRows } from '../../../src/ui/screens/frame.tsx'
import { textOf, widthOf } from '../../../src/ui/text/line.ts'
import { type Chance, chanceOf } from '../../support/damage/chance.ts'
import { emptyHome } from './bench.ts'
import { keysByChance } from './keys-by-chance.ts'

/** Keys between two frames, at most. */
const BETWEEN_FRAMES = 20
/** Of a failure so many of the last keys are told. */
const TOLD = 200

/** The demo job in a folder of its own, told up to the middle of its build-up or to its end. */
export function demoHome(whole: boolean): string {
  const home = emptyHome()
  addDemoJob(new QuickShelf(home), { whole })
  return home
}

/**
 * Presses so many keys on a copy of a home, by chance but always the same for a seed, and holds the screens to what must
 * be so whatever is pressed. Answers what came of it.
 */
export async function pressAtRandom(home: string, { seed, keys }: { seed: number; keys: number }) {
  const pressed: string[] = []
  const monkey = new Monkey(home, seed)
  let frames = 0
  try {
    while (pressed.length < keys) {
      for (const key of monkey.next()) {
        pressed.push(key)
        monkey.press(key)
        if (pressed.length % BETWEEN_FRAMES > 0) continue
        frames += 1
        monkey.look()
        // What an errand comes to is told between two keys.
        await Promise.resolve()
      }
    }
    monkey.takeBack(20)
    monkey.readAgain()
  } catch (cause) {
    const last = JSON.stringify(pressed.slice(-TOLD).join(''))
    throw new Error(`seed ${seed}, after ${pressed.length} keys, the last of them ${last}\n${cause}`, {
      cause,
    })
  } finally {
    monkey.leave()
  }
  return { keys: pressed.length, frames, ...monkey.tally() }
}

/** Who presses anything at all: a screen, and what was seen of it. */
class Monkey {
  readonly #shelf: QuickShelf
  readonly #chance: Chance
  readonly #seen = new Set<string>()
  #reader = keyReader()
  #desk: Desk
  #minutes = 0
  #audited = -1
  #recorded = 0
  #starts = 1

  constructor(from: string, seed: number) {
    const home = emptyHome()
    cpSync(from, home, { recursive: true })
    this.#shelf = new QuickShelf(home, { now: () => this.#now() })
    this.#chance = chanceOf(seed)
    this.#desk = this.#open()
  }

  /** Keys that are pressed one after the other before anything else can be. */
  next(): string[] {
    const chance = this.#chance
    this.#minutes += chance.whole(0, 3) === 0 ? chance.whole(0, 30) : 0
    if (chance.whole(0, 39) === 0) this.#desk.resize(anySize(chance))
    return keysByChance(chance, this.#desk)
  }

  press(text: string): void {
    for (const pressed of this.#reader.push(text)) this.#desk.press(pressed)
    if (this.#reader.waiting()) for (const pressed of this.#reader.flush()) this.#desk.press(pressed)
    if (this.#desk.ended !== null) this.#startAgain()
  }

  /** What must be so in every frame. */
  look(): void {
    this.#desk.tick()
    const { session, size, screen } = this.#desk
    this.#seen.add(screen.at)
    if (session && session.version !== this.#audited) {
      this.#audited = session.version
      expect(session.unlawful).toBeNull()
      expect(auditLedger(session.state.ledger)).toEqual([])
    }
    // A smaller window says only that it is too small; the pages are made for it all the same.
    if (size.width < SMALLEST.width || size.height < SMALLEST.height) {
      this.#desk.page()
      this.#desk.meaning()
      return
    }
    const { rows, cursor } = frameRows(this.#desk, size)
    if (rows.length !== size.height)
      throw new Error(`${rows.length} rows instead of ${size.height} on ${screen.at}`)
    for (const row of rows) {
      const text = textOf(row)
      if (widthOf(row) > size.width) throw new Error(`wider than ${size.width} on ${screen.at}: ${text}`)
      if (/[\p{Cc}\p{Bidi_Control}]/u.test(text))
        throw new Error(`a control on ${screen.at}: ${JSON.stringify(text)}`)
    }
    if (!cursor || cursor.x >= size.width || cursor.y >= size.height)
      throw new Error(`the cursor stands outside on ${screen.at}: ${JSON.stringify(cursor)}`)
  }

  /** Each 0 takes the last entry back, or says why it cannot. */
  takeBack(times: number): void {
    for (let nth = 0; nth < times; nth += 1) {
      const { session } = this.#desk
      if (!session) return
      const before = session.entries().length
      this.press('\x15.\r\x15.\r0\r')
      const last = session.entries().at(-1)
      const sign = this.#desk.answer()?.sign?.word
      if (session.entries().length > before) expect(last?.type).toBe('undone')
      else expect(sign ?? this.#desk.answer()?.told.what).toBeTruthy()
      this.look()
    }
  }

  /** The record on the disk comes to what the screens show. */
  readAgain(): void {
    const { session } = this.#desk
    if (!session) return
    this.#recorded += session.entries().length
    expect(fold(session.entries())).toEqual(session.state)
    expect(this.#shelf.open(join(session.store.path, '..')).entries()).toEqual(session.entries())
  }

  tally() {
    return { screens: this.#seen, entries: this.#recorded, starts: this.#starts }
  }

  leave(): void {
    this.#desk.close()
  }

  #startAgain(): void {
    const { size } = this.#desk
    this.#desk.close()
    this.#starts += 1
    this.#reader = keyReader()
    this.#desk = this.#open()
    this.#desk.resize(size)
  }

  #open(): Desk {
    return new Desk({ shelf: this.#shelf, colour: false, errands: ERRANDS, now: () => this.#now() })
  }

  #now(): Date {
    return new Date(Date.UTC(2030, 0, 15, 8, this.#minutes))
  }
}

/** The same jobs on the disk, without waiting until it has them. */
class QuickShelf extends DiskShelf {
  readonly #now: (() => Date) | undefined

  constructor(home: string, options: { now?: () => Date } = {}) {
    super(home, options)
    this.#now = options.now
  }

  override open(path: string): Session {
    const fs = { ...nodeFileSystem, fdatasyncSync: () => {}, fsyncSync: () => {} }
    return new Session(openJournal(path, { parse: parseEntry, fs }), { now: this.#now })
  }

  /** To tell the demo once more takes its time, and it is here already. */
  override addDemo(): string {
    return this.chosen() ?? super.addDemo()
  }
}

/** Errands that are done at once, or refused. */
const ERRANDS: Errands = {
  run: async ({ errand }) =>
    errand === 'print'
      ? { ok: true, text: ['done'], entries: [], answer: null }
      : {
          ok: false,
          exit: 'refused',
          code: 'no',
          told: { what: 'Not here.', lines: [], cure: 'Go on.' },
          entries: [],
        },
}

function anySize(chance: Chance): Size {
  if (chance.whole(0, 3) === 0) return { width: 80, height: 24 }
  if (chance.whole(0, 3) === 0) return { width: chance.whole(1, 90), height: chance.whole(1, 30) }
  if (chance.whole(0, 3) === 0) return { width: chance.whole(64, 300), height: chance.whole(18, 100) }
  return { width: chance.whole(64, 130), height: chance.whole(18, 45) }
}
