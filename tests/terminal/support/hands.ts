import { REPEAT_MS } from '../../../src/ui/controls/line/enter-guard.ts'
import type { PutbackTerminal } from './putback-terminal.ts'

/** An Enter that comes sooner after another is taken for the bouncing of a key. */
const FINGER_MS = REPEAT_MS + 10

/** Something that the screen offers under a number. */
interface Offered {
  no: number
  says: string
}

/**
 * The hands and the eyes of a person at putback: presses keys, and waits for what the screen shows of them. Counts
 * what went without a letter.
 */
export class Hands {
  terminal: PutbackTerminal
  /** Actions by digits, Enter, Backspace, signs of the number pad and the scanner alone. */
  withoutLetters = 0
  /** Actions with words. */
  withLetters = 0
  #pressedAt = 0

  constructor(terminal: PutbackTerminal) {
    this.terminal = terminal
  }

  /** Which screen it is: the names of the screens with the one that is open, and its own title. */
  where(): string {
    return this.terminal.rows().slice(1, 3).join('\n')
  }

  /** What Enter does on the empty line, as the rule above the line says it; cut where it has no room. */
  enterDoes(): string {
    return /^─ Enter (.*?) ?─+(?: [-+] .*)?$/.exec(this.#ruleRow())?.[1] ?? ''
  }

  /** What stands in the line. */
  line(): string {
    const { rows, rule } = this.#parts()
    return (rows[rule + 1] ?? '').slice(' > '.length)
  }

  /** What is said under the line, as one text. */
  said(): string {
    const { rows, rule } = this.#parts()
    return rows
      .slice(rule + 2, -1)
      .map((row) => row.trim().replace(/^· /, ''))
      .join(' ')
  }

  /** Presses keys and waits until something is so on a frame that is drawn whole. */
  async press(keys: string, isSo: () => boolean, what: string): Promise<void> {
    if (/\p{L}/u.test(keys)) this.withLetters += 1
    else this.withoutLetters += 1
    this.#pressedAt = performance.now()
    this.terminal.write(keys)
    await this.terminal.until(() => this.terminal.isDrawn && isSo(), `${what} after ${JSON.stringify(keys)}`)
  }

  /** Enters what is recorded as entry `n`. */
  async record(text: string, n: number): Promise<void> {
    const isRecorded = () => this.#hasRecorded(n)
    if (text === '') await this.#enterAlone(isRecorded, `entry ${n}`)
    else await this.press(`${text}\r`, isRecorded, `entry ${n}`)
  }

  /** Enter on the empty line, no faster than a finger: where it was passed over as none, once more. */
  async #enterAlone(isSo: () => boolean, what: string): Promise<void> {
    const isPassedOver = () => this.said().includes('Enter came again at once')
    await pause(this.#pressedAt + FINGER_MS - performance.now())
    await this.press('\r', () => isSo() || isPassedOver(), what)
    if (isSo()) return
    await pause(FINGER_MS)
    await this.press('\r', isSo, what)
  }

  /** Enters a number that records, or that puts words into the line which are then completed. */
  async enter(no: string, n: number, then: string): Promise<void> {
    const isTaken = () => this.#hasRecorded(n) || /\p{L}/u.test(this.line())
    if (no === '') await this.#enterAlone(isTaken, `entry ${n} or words`)
    else await this.press(`${no}\r`, isTaken, `entry ${n} or words`)
    if (!this.#hasRecorded(n)) await this.record(then, n)
  }

  /** Takes the last entry back. */
  async takeBack(): Promise<void> {
    await this.clear()
    await this.press('0\r', () => this.said().startsWith('< TAKEN BACK '), 'that it is taken back')
  }

  /** Goes somewhere; nothing is pressed where one is there already. */
  async goTo(place: RegExp, keys: string): Promise<void> {
    const isThere = () => place.test(this.where())
    if (!isThere()) await this.press(keys, isThere, String(place))
  }

  /** Goes to another screen, whichever it is. */
  async goElsewhere(keys: string): Promise<void> {
    const before = this.where()
    await this.press(keys, () => this.where() !== before, 'another screen')
  }

  /** Backspace on the empty line. */
  async back(): Promise<void> {
    await this.goElsewhere('\x7f')
  }

  /** Goes where something that has a number leads. */
  async choose(isWanted: (says: string) => boolean, place: RegExp): Promise<void> {
    await this.goTo(place, `${await this.#number(isWanted)}\r`)
  }

  /** Enters a number that puts words into the line. */
  async begin(isWanted: (says: string) => boolean, words: RegExp): Promise<void> {
    const no = await this.#number(isWanted)
    await this.press(`${no}\r`, () => words.test(this.line()), `${words} in the line`)
  }

  /** Empties a line that was not taken, so that keys mean what they do on an empty one. */
  async clear(): Promise<void> {
    if (this.line() !== '') await this.press('\r', () => this.line() === '', 'an empty line')
  }

  /** The number under which the screen offers something, scrolled to where it is out of sight; null where it does not. */
  async find(isWanted: (says: string) => boolean): Promise<number | null> {
    while (/- \d+ above/.test(this.#ruleRow())) await this.#scroll('-')
    for (;;) {
      const found = this.offered().find(({ says }) => isWanted(says))
      if (found) return found.no
      if (!/\+ \d+ below/.test(this.#ruleRow())) return null
      await this.#scroll('+')
    }
  }

  /** Everything in sight that has a number. */
  offered(): Offered[] {
    const { rows, rule } = this.#parts()
    const found: Offered[] = []
    for (const row of rows.slice(3, rule)) {
      const numbered = [...row.matchAll(/(?<=^ {1,3}| {3,})(\d{1,3}) {2,3}(\S.*?)(?= {3,}\d{1,3} {2}|$)/g)]
      const last = found.at(-1)
      if (numbered.length === 0 && last && /^ {5,}\S/.test(row)) last.says += ` ${row.trim()}`
      found.push(...numbered.map(([, no, says = '']) => ({ no: Number(no), says })))
    }
    return found
  }

  async #number(isWanted: (says: string) => boolean): Promise<number> {
    const no = await this.find(isWanted)
    if (no === null) throw new Error(`it has no number here: ${isWanted}\n${this.terminal.text()}`)
    return no
  }

  #hasRecorded(n: number): boolean {
    return this.said().endsWith(`0 takes entry ${n} back.`)
  }

  async #scroll(key: '+' | '-'): Promise<void> {
    const before = this.terminal.text()
    await this.press(key, () => this.terminal.text() !== before, 'other rows')
  }

  #ruleRow(): string {
    const { rows, rule } = this.#parts()
    return rows[rule] ?? ''
  }

  #parts(): { rows: string[]; rule: number } {
    const rows = this.terminal.rows()
    return { rows, rule: rows.findLastIndex((row) => row.startsWith('─')) }
  }
}

function pause(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, Math.max(0, milliseconds)))
}
