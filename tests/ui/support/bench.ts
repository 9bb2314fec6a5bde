import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import { DiskShelf } from '../../../src/cli/job-shelf.ts'
import type { Command } from '../../../src/journal/command.ts'
import type { Errand } from '../../../src/lines/errand.ts'
import { readLine } from '../../../src/lines/read-line.ts'
import type { ErrandOutcome, Errands } from '../../../src/session/errands.ts'
import type { Session } from '../../../src/session/session.ts'
import { answerRows } from '../../../src/ui/answer.ts'
import { keyReader } from '../../../src/ui/controls/line/key-reader.ts'
import { Desk } from '../../../src/ui/desk/desk.ts'
import { belowLine } from '../../../src/ui/layout.ts'
import { textOf } from '../../../src/ui/text/line.ts'

const SOME_DAY = new Date(2030, 0, 15, 14, 5)

/** A folder of jobs that is gone after the test. */
export function emptyHome(): string {
  const home = mkdtempSync(join(tmpdir(), 'putback-ui-'))
  onTestFinished(() => rmSync(home, { recursive: true, force: true }))
  return home
}

export function shelfIn(home: string): DiskShelf {
  return new DiskShelf(home, { now: () => SOME_DAY })
}

/** The same folder, some days after the day on which these jobs are told. */
export function shelfLater(home: string, days: number): DiskShelf {
  const day = new Date(SOME_DAY)
  day.setDate(day.getDate() + days)
  return new DiskShelf(home, { now: () => day })
}

/** A job told in the language of the record, and the screens in front of it. */
export function jobWith(...lines: string[]) {
  return jobWithErrands(NO_ERRANDS, ...lines)
}

/** The same with errands that a test answers. */
export function jobWithErrands(errands: Errands, ...lines: string[]) {
  const home = emptyHome()
  const shelf = shelfIn(home)
  const path = shelf.create({ name: 'blue twin', machine: 'the blue twin', units: 'metric' })
  say(shelf.open(path), ...lines)
  return { ...screens(shelf, undefined, errands), shelf, path, home }
}

/** Sends lines of the language to a session, each of which must be recorded. */
export function say(session: Session, ...lines: string[]): void {
  for (const line of lines) {
    const reading = readLine(line, session.state)
    if (reading.kind !== 'commands') throw new Error(`no command: ${line} (${JSON.stringify(reading)})`)
    for (const command of reading.commands) sendTo(session, command)
  }
}

/** Sends a command, which must be recorded. */
export function sendTo(session: Session, command: Command): void {
  const outcome = session.send(command)
  if (outcome.kind !== 'recorded') throw new Error(`not recorded: ${JSON.stringify({ command, outcome })}`)
}

/** The screens over a shelf, with what a person does with them and sees on them. */
export function screens(
  shelf: DiskShelf,
  size = { width: 80, height: 24 },
  errands: Errands = NO_ERRANDS,
  colour = false,
) {
  const rings: number[] = []
  const desk = new Desk({
    shelf,
    colour,
    errands,
    now: () => SOME_DAY,
    ring: (times) => rings.push(times),
  })
  desk.resize(size)
  onTestFinished(() => desk.close())
  const reader = keyReader()
  const type = (text: string) => {
    for (const pressed of [...reader.push(text), ...reader.flush()]) desk.press(pressed)
  }
  /** All rows of the screen as text. */
  const rows = (): string[] => {
    const page = desk.page()
    const scrolling = Array.from({ length: page.rows.length }, (_, index) => textOf(page.rows.at(index)))
    return [textOf(page.title), ...page.top.map(textOf), ...scrolling]
  }
  return {
    desk,
    /** Types each line and Enter. */
    enter: (...lines: string[]) => {
      for (const line of lines) type(`${line}\r`)
    },
    type,
    rows,
    text: () => rows().join('\n'),
    /** The answer to the last line, without breaks. */
    answer: (): string => {
      const answer = desk.answer()
      return answer ? answerRows(answer, 200).map(textOf).join('\n') : ''
    },
    /** What is shown under the line now. */
    below: (): string => belowLine(size, desk).map(textOf).join('\n').trimEnd(),
    line: () => `${desk.typed().before}|${desk.typed().after}`,
    state: () => {
      const { session } = desk
      if (!session) throw new Error('no job is open')
      return session.state
    },
    /** How often the bell rang each time that it did. */
    rings,
    entries: () => desk.session?.entries().length ?? 0,
  }
}

/** Errands that are out until the test says what came of them. */
export function heldErrands() {
  const asked: Errand[] = []
  let last: { tell: (progress: string) => void; end: (outcome: ErrandOutcome) => void } | null = null
  const errands: Errands = {
    run: (errand, _, tell) => {
      asked.push(errand)
      return new Promise((end) => {
        last = { tell, end }
      })
    },
  }
  return {
    errands,
    asked,
    tell: (progress: string) => last?.tell(progress),
    /** It comes back, and all that follows from it has happened. */
    end: async (outcome: ErrandOutcome) => {
      last?.end(outcome)
      await new Promise((resolve) => setImmediate(resolve))
    },
  }
}

/** An errand that went well, in words. */
export function done(...text: string[]): ErrandOutcome {
  return { ok: true, text, entries: [], answer: null }
}

/** An errand that was refused. */
export function refused(what: string, cure: string): ErrandOutcome {
  return { ok: false, exit: 'refused', code: 'no', told: { what, lines: [], cure }, entries: [] }
}

const NO_ERRANDS: Errands = {
  run: async ({ errand }) => {
    throw new Error(`no errands here: ${errand}`)
  },
}
