import type { Entry } from '../../../src/journal/entry.ts'
import { readCode } from '../../../src/label/code.ts'
import { readLine } from '../../../src/lines/read-line.ts'
import type { Reading } from '../../../src/lines/reading.ts'
import { Session } from '../../../src/session/session.ts'
import { JournalInMemory } from '../../support/journal-in-memory.ts'
import type { Machine } from '../machines/machine.ts'
import { aboutOf } from './about.ts'
import { Aim } from './aim.ts'
import { addKeys, type Keys, Names, noKeys } from './kinds.ts'
import { Terminal } from './terminal.ts'
import { fewestKeys, type Wanted, type WayThere } from './ways.ts'

/** How something was done: Enter alone, a number of the screen, a short form or words; a scan is no key. */
type How = 'enter' | 'number' | 'words' | 'scan'

/** One thing that was done at the screens. */
export interface Done {
  line: string
  how: How
  keys: Keys
  pressed: string
  entries: Entry[]
  isTaken: boolean
}

/** A line that is to be said, by its place among those that may be next. */
interface Line extends Wanted {
  place: number
}

const INTO_NEW_BAG = / into new bag$/
const MINUTE = 60_000

/** Somebody at the screens, who does what a line says with as few keys as the screens allow. */
export class Typist {
  readonly #journal = new JournalInMemory()
  readonly #terminals = new Map<string, Terminal>()
  readonly #names: Names
  #now = Date.UTC(2030, 0, 1, 8)
  #by = 'Anna'

  constructor(machine: Machine) {
    this.#names = new Names(machine)
    const session = new Session(this.#journal.opened(), { now: () => new Date(this.#now) })
    session.send({ do: 'open-job', no: 1, name: machine.shape, machine: machine.shape, units: 'metric' })
  }

  get terminal(): Terminal {
    const known = this.#terminals.get(this.#by)
    if (known) return known
    const made = new Terminal(this.#journal, this.#by, () => new Date(this.#now))
    this.#terminals.set(this.#by, made)
    return made
  }

  /** Somebody else goes on, at a terminal of their own. */
  handOver(by: string): void {
    this.#by = by
    this.terminal.look()
  }

  /** The clock moves on to a time, in milliseconds. */
  wait(until: number): void {
    this.#now = Math.max(this.#now, until)
  }

  /**
   * Of several lines the one that takes the fewest keys, the first where several take as many; of the others no words are
   * typed. `read`: what they were read as before, where nothing that they name has changed since.
   */
  nearest(lines: readonly string[], read: Map<string, Reading>): number {
    this.terminal.look()
    const state = this.terminal.session.stateNow()
    for (const line of lines) if (!read.has(line)) read.set(line, readLine(line, state))
    return this.#way(lines.map((line) => [line, read.get(line) as Reading]))?.wanted.place ?? 0
  }

  /** Does what a line says. A new bag is taken first where one is in hand already, for that is Enter. */
  do(line: string): Done {
    this.#now += MINUTE / 4
    this.terminal.look()
    if (!INTO_NEW_BAG.test(line) || this.terminal.session.state.hand === null) return this.#doLine(line)
    const bag = this.#doLine('bag')
    const filled = this.#doLine(line.replace(INTO_NEW_BAG, ''))
    addKeys(filled.keys, bag.keys)
    return {
      ...filled,
      line,
      pressed: bag.pressed + filled.pressed,
      entries: [...bag.entries, ...filled.entries],
    }
  }

  #doLine(line: string): Done {
    if (isScan(line)) return this.#scan(line)
    const way = this.#way([[line, readLine(line, this.terminal.session.stateNow())]])
    return way ? this.#go(line, way) : this.#say(line)
  }

  #way(lines: readonly [string, Reading][]): WayThere<Line> | null {
    const { scene, trail, desk } = this.terminal
    const wanted = lines.flatMap(([line, reading], place) => this.#wanted(line, reading, place))
    return fewestKeys({ scene, trail, hasLine: desk.standing() !== null }, wanted)
  }

  #wanted(line: string, reading: Reading, place: number): Line[] {
    const { session } = this.terminal
    if (reading.kind !== 'commands') return []
    const { commands } = reading
    const aim = new Aim(session, commands)
    // What would be refused now is done later.
    if (place > 0 && aim.isRefused) return []
    // Only the first is ever typed: of the others, what Enter or a number does.
    return [{ place, aim, about: aboutOf(session.state, commands), line: place === 0 ? line : null }]
  }

  #go(line: string, { strokes, wanted }: WayThere<Line>): Done {
    const { terminal } = this
    const before = terminal.session.entries().length
    for (const { keys, act } of strokes) {
      const isLast = act === strokes.at(-1)?.act
      // What was refused leads nowhere.
      const isRefused = isLast && wanted.aim.isRefused
      terminal.press(keys, isRefused ? null : act)
    }
    const entries = terminal.session.entries().slice(before)
    const pressed = strokes.map(({ keys }) => keys).join('')
    return this.#done(line, pressed, howOf(strokes.map(({ keys }) => keys)), entries)
  }

  /** A line that is no command, or is not understood: it is typed as it stands. */
  #say(line: string): Done {
    const { terminal } = this
    const before = terminal.session.entries().length
    terminal.press(line, null)
    const meaning = terminal.desk.meaning()
    terminal.press('\r', meaning.kind === 'act' ? meaning.act : null)
    return this.#done(line, `${line}\r`, 'words', terminal.session.entries().slice(before))
  }

  #scan(line: string): Done {
    this.terminal.press(`${line}\r`, { do: 'go', to: { at: 'scan', text: line } })
    return this.#done(line, '', 'scan', [])
  }

  #done(line: string, pressed: string, how: How, entries: Entry[]): Done {
    const keys = noKeys()
    addKeys(keys, this.#names.kindsOf(pressed))
    return { line, how, keys, pressed, entries, isTaken: entries.length > 0 }
  }
}

function isScan(line: string): boolean {
  return readCode(line).kind === 'code'
}

function howOf(strokes: readonly string[]): How {
  if (strokes.every((keys) => /^\r+$/.test(keys))) return 'enter'
  return strokes.some((keys) => /[a-z]/i.test(keys)) ? 'words' : 'number'
}
