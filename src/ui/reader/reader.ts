import type { Desk } from '../desk/desk.ts'
import { hearInput } from '../hooks/hear-input.ts'
import { READER_KEYS, type Reading, readingOf } from './reading.ts'
import { ROWS_AT_ONCE, rowsFrom, whatIsNew, wholeReading } from './what-is-new.ts'

/** What is read aloud at one time. */
export interface Utterance {
  no: number
  sentences: readonly string[]
}

/**
 * The screens for the ear, or for a terminal that only writes on: a whole line goes in, sentences come out. The desk
 * is the same as for the eye; only the keys that act on an empty line without Enter are lines of their own here.
 */
export class Reader {
  readonly #desk: Desk
  readonly #listeners = new Set<() => void>()
  readonly #stop: () => void
  #hear = (_: string) => {}
  #said: readonly Utterance[] = []
  #last: Reading
  /** The row of the last one that was read on the screen. */
  #from = 0
  /** A line is on its way to the desk: an Enter that would record something waits a moment for what follows. */
  #isUnread = false
  #isTaking = false
  #isAwaited = false

  constructor(desk: Desk) {
    this.#desk = desk
    desk.resize(ROOM)
    this.#last = readingOf(desk)
    this.#say(['Putback, read line by line.', ...READER_KEYS, ...wholeReading(this.#last)])
    const stopHearing = hearInput(desk, {
      subscribe: (listener) => {
        this.#hear = listener
        return () => {}
      },
    })
    const stopWatching = desk.subscribe(() => this.#changed())
    this.#stop = () => {
      stopHearing()
      stopWatching()
    }
  }

  /** Everything that was said, oldest first. */
  get said(): readonly Utterance[] {
    return this.#said
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  /** Takes a line that was typed or scanned, without its end. */
  take(line: string): void {
    if (line === '+') this.#readOn()
    else if (line === '-') this.#readAll()
    else if (line === '*') this.#say(['Large letters are for the eye. What they say is read in any case.'])
    else this.#pass(line === '/' ? this.#wayBack() : `${line}\r`)
  }

  /** The input has ended: leaves, with everything recorded. */
  end(): void {
    this.#stop()
    this.#desk.press({ key: 'leave' })
  }

  /** A line that stands there is cleared first, as with Esc; on an empty one it is Backspace. */
  #wayBack(): string {
    const { before, after } = this.#desk.typed()
    return before + after === '' ? BACKSPACE : CLEAR
  }

  #pass(chunk: string): void {
    this.#isTaking = true
    this.#isUnread = true
    const { version } = this.#desk
    this.#hear(chunk)
    this.#isTaking = false
    if (this.#desk.version !== version) this.#read()
  }

  /** The desk tells of a change in the middle of it: it is read when all of it has happened. */
  #changed(): void {
    if (this.#isTaking || this.#isAwaited) return
    this.#isAwaited = true
    queueMicrotask(() => {
      this.#isAwaited = false
      this.#read()
    })
  }

  #read(): void {
    if (this.#desk.ended !== null) return
    if (this.#isUnread) this.#answer()
    else this.#overhear()
  }

  #answer(): void {
    this.#isUnread = false
    const now = readingOf(this.#desk)
    this.#say(whatIsNew(now, this.#last))
    this.#last = now
    this.#from = 0
  }

  /** What comes by itself, as the end of an errand, is read when it comes; the rest with the next line. */
  #overhear(): void {
    const { answer } = readingOf(this.#desk)
    const news = answer.filter((text) => !this.#last.answer.includes(text))
    this.#last = { ...this.#last, answer }
    if (news.length > 0) this.#say(news)
  }

  #readOn(): void {
    const next = this.#from + ROWS_AT_ONCE
    const rows = rowsFrom(readingOf(this.#desk).rows, next)
    if (rows.length > 0) this.#from = next
    this.#say(rows.length > 0 ? rows : ['No more rows. - reads all again.'])
  }

  #readAll(): void {
    this.#last = readingOf(this.#desk)
    this.#from = 0
    this.#say(wholeReading(this.#last))
  }

  #say(sentences: readonly string[]): void {
    this.#said = [...this.#said, { no: this.#said.length, sentences: sentences.filter(Boolean) }]
    for (const listener of this.#listeners) listener()
  }
}

/** No row is broken or cut where nobody looks at columns. */
const ROOM = { width: 1000, height: 100 }

const BACKSPACE = '\x7f'
const CLEAR = '\x15'
