import { performLine } from '../../../src/cli/perform-line.ts'
import type { Result } from '../../../src/cli/result.ts'
import { Session } from '../../../src/session/session.ts'
import { brokenOff } from '../../../src/session/views.ts'
import { JournalInMemory } from '../../support/journal-in-memory.ts'

const MINUTE = 60_000

/** The program as a mechanic has it on the cart: a line is said, an answer comes. Time is the mechanic's own. */
export class Bench {
  #now = Date.UTC(2030, 0, 1, 8)
  #by: string
  readonly #journal = new JournalInMemory()
  #session: Session
  /** Lines said, in their order, with what came of them. */
  readonly said: { line: string; result: Result }[] = []

  constructor(name: string, by = 'Anna') {
    this.#by = by
    this.#session = this.#open()
    this.#session.send({ do: 'open-job', no: 1, name, machine: name, units: 'metric' })
  }

  get session(): Session {
    return this.#session
  }

  say(line: string): Result {
    this.#now += MINUTE / 4
    const result = performLine(this.#session, line, {
      drawing: { colour: false, invert: false },
      otherJob: (no) => (no === 2 ? { no: 2, name: 'the other job' } : null),
    })
    if ('errand' in result) throw new Error(`no errand was meant: ${line}`)
    this.said.push({ line, result })
    return result
  }

  wait(minutes: number): void {
    this.#now += minutes * MINUTE
  }

  /** Another pair of hands at another terminal: work goes on. */
  reopen(by = this.#by): void {
    this.#by = by
    this.#session = this.#open()
  }

  /** The program is opened again after it ended, by whoever comes then. As the screens do, it notes work that broke off without a word. */
  takeUp(by: string): void {
    this.reopen(by)
    if (brokenOff(this.#session.state)) this.#session.send({ do: 'stop', abrupt: true, note: '' })
  }

  get by(): string {
    return this.#by
  }

  #open(): Session {
    return new Session(this.#journal.opened(), { now: () => new Date(this.#now), by: this.#by })
  }
}
