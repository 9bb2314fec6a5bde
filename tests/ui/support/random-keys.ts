import { cpSync } from 'node:fs'
import { join } from 'node:path'
import { expect } from 'vitest'
import { addDemoJob } from '../../../src/cli/demo-job.ts'
import { DiskShelf } from '../../../src/cli/job-shelf.ts'
import { fold } from '../../../src/journal/fold.ts'
import { labelCode, MACHINE_NUMBER, stepNumber } from '../../../src/label/code.ts'
import { auditLedger } from '../../../src/ledger/laws.ts'
import { verbs } from '../../../src/lines/verbs.ts'
import type { Errands } from '../../../src/session/errands.ts'
import { Session } from '../../../src/session/session.ts'
import { parseEntry } from '../../../src/session/stored-entry.ts'
import { nodeFileSystem } from '../../../src/storage/file-system.ts'
import { openJournal } from '../../../src/storage/open-journal.ts'
import { keyReader } from '../../../src/ui/controls/line/key-reader.ts'
import { Desk } from '../../../src/ui/desk.ts'
import { type Size, SMALLEST } from '../../../src/ui/layout.ts'
import { frameRows } from '../../../src/ui/screens/frame.tsx'
import { textOf, widthOf } from '../../../src/ui/text/line.ts'
import { type Chance, chanceOf } from '../../support/damage/chance.ts'
import { emptyHome } from './bench.ts'

/** Keys between two frames, at most. */
const BETWEEN_FRAMES = 10
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
    const makers = KINDS[chance.whole(0, KINDS.length - 1)] as Maker
    return makers(chance, this.#desk)
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

type Maker = (chance: Chance, desk: Desk) => string[]

/** What may be pressed: what is named more often here is pressed more often. */
const KINDS: readonly Maker[] = [
  ...times(6, (chance) => [anyDigit(chance)]),
  ...times(12, () => ['\r']),
  ...times(12, (chance) => [anyDigit(chance), '\r']),
  ...times(3, () => ['\x7f']),
  ...times(3, (chance) => [oneOf([...'.*+-'], chance)]),
  ...times(3, (chance) => ['.', anyDigit(chance), '\r']),
  ...times(3, (chance, desk) => [...anyCode(chance, desk), oneOf(['\r', '\t', '\n'], chance)]),
  ...times(3, (chance) => [...anyLine(chance), '\r']),
  ...times(1, (chance) => [...anyLine(chance)]),
  ...times(5, (chance, desk) => ['\x15', ...aboutTheJob(chance, desk), '\r']),
  ...times(3, (chance) => [oneOf(SEQUENCES, chance)]),
  ...times(1, (chance) => [oneOf([...'abcdefghijklmnopqrstuvwxyz?@,;: '], chance)]),
  ...times(1, (chance) => [brokenText(chance)]),
  ...times(1, (chance) => [`\x1b[200~${anyLine(chance)}\n${anyLine(chance)}\x1b[201~`]),
  ...times(2, () => ['\x15', '0', '\r']),
  ...times(1, (chance) => [...oneOf(WORDS, chance), '\r']),
  ...times(2, () => ['\x15']),
]

function anyDigit(chance: Chance): string {
  return String(chance.whole(0, chance.whole(0, 2) === 0 ? 9 : 4))
}

function times(count: number, maker: Maker): Maker[] {
  return Array<Maker>(count).fill(maker)
}

const SEQUENCES = [
  ...['\x1b[A', '\x1b[B', '\x1b[C', '\x1b[D', '\x1b[H', '\x1b[F', '\x1b[5~', '\x1b[6~', '\x1b[3~'],
  ...['\x1b', '\x1b\x1b', '\x1bOP', '\x1b[15~', '\x1b[', '\x01', '\x05', '\x15', '\x03'],
]

const WORDS = ['quit', 'jobs', '?', '? tighten', 'told', 'sound', 'label', 'proposals', 'log', 'undo', 'redo']

const EXAMPLES = verbs.flatMap(({ examples }) => examples)

/** A line that somebody could write, with something of another one in it now and then. */
function anyLine(chance: Chance): string {
  const words = oneOf(EXAMPLES, chance).split(' ')
  const other = oneOf(EXAMPLES, chance).split(' ')
  switch (chance.whole(0, 5)) {
    case 0:
      words.splice(chance.whole(0, words.length - 1), 1)
      break
    case 1:
      words.splice(chance.whole(0, words.length), 0, oneOf(other, chance))
      break
    case 2:
      words[chance.whole(0, words.length - 1)] = oneOf(other, chance)
      break
  }
  return words.join(' ').replace(/\d+/g, (number) => (chance.whole(0, 2) === 0 ? number : anyNumber(chance)))
}

/** A line about what is there: its pieces, steps and tightenings by their ids. */
function aboutTheJob(chance: Chance, desk: Desk): string {
  const state = desk.session?.state
  if (!state) return ''
  const piece = oneOf([...state.ledger.accounts.keys()], chance) ?? 'p1'
  const name = state.ledger.accounts.get(piece)?.piece.name ?? ''
  const step = oneOf([...state.steps.keys()], chance) ?? 1
  const bag = oneOf([...state.containers.keys()], chance) ?? 1
  const tightening = oneOf([...state.tightenings.keys()], chance) ?? 't1'
  return oneOf(
    [
      `fit ${piece}`,
      `fit ${name}`,
      `move ${piece} to bench`,
      `move ${name} to ${bag}`,
      `take ${step}`,
      `reopen ${step} because it leaks`,
      `override start ${step} because I know`,
      `count ${bag}`,
      `turn ${tightening}`,
      `judge ${piece} replace because worn`,
      `accept ${piece}`,
      `scrap ${piece}`,
      `begin ${name} off`,
      `off 3 M6x20 bolts into ${bag}`,
      `void ${bag}`,
      `draw ${piece}`,
      `where ${name}`,
    ],
    chance,
  )
}

function anyCode(chance: Chance, { session }: Desk): string {
  if (!session) return labelCode(chance.whole(1, 3), chance.whole(1, 20))
  const { job, containers, steps } = session.state
  const numbers = [MACHINE_NUMBER, ...containers.keys(), ...[...steps.keys()].map(stepNumber)]
  const code = labelCode(job.no, oneOf(numbers, chance))
  // A digit misread, now and then.
  return chance.whole(0, 9) === 0 ? code.replace(/\d$/, (digit) => String((Number(digit) + 1) % 10)) : code
}

function anyNumber(chance: Chance): string {
  return String(chance.whole(0, chance.whole(0, 19) === 0 ? 99_999 : 12))
}

/** Bytes as they may come over a bad line, read as the terminal's text. */
function brokenText(chance: Chance): string {
  const bytes = Array.from({ length: chance.whole(1, 8) }, () => chance.whole(0, 255))
  // Ctrl-C would leave each time.
  return Buffer.from(bytes.filter((byte) => byte !== 3)).toString('utf8')
}

function anySize(chance: Chance): Size {
  if (chance.whole(0, 3) === 0) return { width: 80, height: 24 }
  if (chance.whole(0, 3) === 0) return { width: chance.whole(1, 90), height: chance.whole(1, 30) }
  if (chance.whole(0, 3) === 0) return { width: chance.whole(64, 300), height: chance.whole(18, 100) }
  return { width: chance.whole(64, 130), height: chance.whole(18, 45) }
}

function oneOf<Thing>(things: readonly Thing[], chance: Chance): Thing {
  return things[chance.whole(0, things.length - 1)] as Thing
}
