import { expect } from 'vitest'
import { codeOf } from '../../../src/session/scan.ts'
import { fastenerCalled } from '../../../src/words/names.ts'
import { Hands } from './hands.ts'
import { looksAt } from './looks-at.ts'
import { type Options, PutbackTerminal } from './putback-terminal.ts'
import { refusedAlike } from './refused-alike.ts'
import { type Place, type Shown, shownAs } from './shown-as.ts'
import { type Entry, ToldBeside } from './told-beside.ts'

/** What a hand reaches for: the scanner and Enter alone, or the numbers of the screen. */
export type Habit = 'scans' | 'numbers'

/**
 * A person who does the lines of a job on the screens, with as few letters as there are: what comes off is typed on its
 * screen without a verb, labels are scanned, what is next is Enter, what else there is to do goes by its number. What has
 * no key is typed as it stands. The command line is told the same beside them, and says what each line must come to.
 */
export class Typist {
  readonly hands: Hands
  readonly beside = new ToldBeside()
  readonly #home: string
  readonly #options: Options
  #habit: Habit
  /** One after the other: work is left and gone on with. */
  readonly #terminals: PutbackTerminal[] = []
  /** The containers that were scanned since the step was taken up. */
  readonly #scanned = new Set<number>()

  constructor(home: string, habit: Habit, options: Options) {
    this.#home = home
    this.#habit = habit
    this.#options = options
    this.hands = new Hands(this.#starts())
  }

  /** Everything that was drawn, with its escape sequences. */
  get raw(): string {
    return this.#terminals.map(({ raw }) => raw).join('')
  }

  /** Does one line. */
  async does(line: string): Promise<void> {
    const open = this.beside.told > 0 ? this.beside.state.build : null
    const result = this.beside.tell(line)
    if (!result.ok) await refusedAlike(this.hands, line.replace(/^refused [a-z-]+: ?/, ''), result)
    else if (line.startsWith('new job')) await this.#newJob()
    else if (!result.entries?.length) await looksAt(this.hands, line)
    else await this.#records(line, result.entries, open)
  }

  #starts(): PutbackTerminal {
    const terminal = new PutbackTerminal(this.#home, this.#options)
    this.#terminals.push(terminal)
    return terminal
  }

  async #newJob(): Promise<void> {
    const { name, machine } = this.beside.state.job
    const { hands } = this
    await hands.terminal.sees('WELCOME')
    await hands.choose((says) => /\bnew job\b/.test(says), /A NEW JOB/)
    await hands.goTo(new RegExp(`A NEW JOB .*${name}`), `${name}\r`)
    await hands.goTo(/\[\.1 OFF\]/, `${machine}\r`)
  }

  async #records(line: string, entries: readonly Entry[], open: number | null): Promise<void> {
    const { hands } = this
    const [entry] = entries
    if (!entry) return
    // What is done a second time goes by its numbers: Enter alone waits to see whether it is a key held down.
    if (entry.type === 'failed') this.#habit = 'numbers'
    if (entry.type === 'build-began') this.#scanned.clear()
    if (entry.type === 'undone') return hands.takeBack()
    if (entry.type === 'stopped' && entry.step !== null) return this.#leaves(entry.note)
    if (entry.type === 'counted') return this.#counts(entry)
    if (this.beside.state.strip !== null || line === 'end') return this.#comesOff(line, entries)
    const shown = shownAs(entry, line, this.beside.session, open)
    if (shown) await this.#chooses(shown, entry)
    else await hands.record(this.#withScan(line), lastOf(entries))
  }

  /** Leaves with a note while work is under way, and comes back. */
  async #leaves(note: string): Promise<void> {
    const { hands } = this
    await hands.clear()
    await hands.goTo(/\[\. NOW\]/, '.\r')
    await hands.choose((says) => says === 'stop work and leave', /STOP WORK/)
    await hands.press(`${note}\r`, () => true, 'the end')
    await hands.terminal.sees('left with 0')
    hands.terminal = this.#starts()
    const isBack = () => hands.terminal.text().replace(/\s+/g, ' ').includes(note)
    await hands.terminal.until(isBack, `the note "${note}"`)
  }

  /** Scans a container and counts blindly what is asked for. */
  async #counts({ container, lines, n }: Extract<Entry, { type: 'counted' }>): Promise<void> {
    const { hands } = this
    await hands.clear()
    await this.#scans(container)
    await hands.goTo(/COUNT /, '2\r')
    const known = lines.filter(({ piece }) => piece !== null)
    for (const [index, { counted }] of known.entries())
      await hands.press(`${counted}\r`, () => hands.terminal.text().includes(`${index + 2} OF `), 'the next')
    const unknown = lines.find(({ piece }) => piece === null)?.counted ?? 0
    await hands.record(String(unknown), n)
  }

  /** What is done on the screen of what comes off. */
  async #comesOff(line: string, entries: readonly Entry[]): Promise<void> {
    const { hands } = this
    const n = lastOf(entries)
    const [, title] = /^begin (.*)$/.exec(line) ?? []
    const isKey = title !== undefined || line === 'end' || /^turn\b/.test(line)
    if (isKey) await hands.clear()
    await hands.goTo(/\[\.1 OFF\]/, '.1\r')
    if (title !== undefined) {
      await hands.begin((says) => says === 'name the next step', /^begin/)
      await hands.record(title, n)
    } else if (line === 'end') {
      const no = await hands.find((says) => says.startsWith('all of it is off'))
      await hands.record(String(no), n)
    } else if (isKey && entries[0]?.type === 'loosened') {
      expect(hands.enterDoes()).toContain(`${fastenerCalled(entries[0].fastener)} is eased`)
      await hands.record('', n)
    } else await hands.record(this.#withScan(line.replace(/^off /, '')), n)
  }

  /** Does what is offered: from a label that is scanned, by Enter alone, or by its number. */
  async #chooses(shown: Shown, { n }: Entry): Promise<void> {
    const { hands } = this
    await hands.clear()
    const { from } = shown
    if (from !== undefined && this.#habit === 'scans' && !this.#scanned.has(from)) await this.#scans(from)
    if (/ label \d{3} /.test(hands.where())) {
      if (isOffered(hands.enterDoes(), shown)) return hands.record('', n)
      await hands.back()
    }
    await this.#goesTo(shown.on)
    const isEnter = isOffered(hands.enterDoes(), shown)
    const isByNumber = !isEnter || this.#habit === 'numbers'
    const number = isByNumber ? await hands.find((says) => isOffered(says, shown)) : null
    if (number === null && !isEnter)
      throw new Error(`nothing here offers "${shown.says.join('", "')}":\n${hands.terminal.text()}`)
    await hands.enter(number === null ? '' : String(number), n, shown.adds ?? '')
  }

  async #goesTo(place: Place): Promise<void> {
    const { hands } = this
    if (place === 'left') return hands.goTo(/\[\.4 LEFT\]/, '.4\r')
    if ('step' in place) {
      const page = new RegExp(`\\[\\.3 BACK\\].*\\n─ step ${place.step}, `)
      if (page.test(hands.where())) return
      await hands.goTo(/WHAT GOES BACK/, '.3\r')
      return hands.goTo(page, `${place.step}\r`)
    }
    await hands.goTo(/WHAT IS DUE/, '.6\r')
    await hands.choose((says) => says.includes(place.compare), /COMPARE /)
  }

  async #scans(container: number): Promise<void> {
    const code = codeOf(this.beside.state, container)
    this.#scanned.add(container)
    await this.hands.goTo(
      new RegExp(` label ${code.slice(0, 3)} ${code.slice(3, 7)} ${code.slice(7)}`),
      `${code}\r`,
    )
  }

  /** A container at the end of a line is scanned. */
  #withScan(line: string): string {
    const { containers } = this.beside.state
    for (const { no, name } of containers.values()) {
      if (name && new RegExp(` (?:in|into|to) ${name}$`).test(line))
        return `${line.slice(0, -name.length)}${codeOf(this.beside.state, no)}`
    }
    return line
  }
}

/** Whether a text of the screen, which may be cut at its end, offers it. */
function isOffered(text: string, { says }: Shown): boolean {
  if (text.startsWith('nothing: ')) return false
  const whole = text.replace(/\.\.$/, '')
  return says.some(
    (each) => whole.includes(each) || (whole !== text && whole !== '' && each.startsWith(whole)),
  )
}

function lastOf(entries: readonly Entry[]): number {
  return entries.at(-1)?.n ?? 0
}
