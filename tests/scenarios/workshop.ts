import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import { readArguments } from '../../src/cli/arguments.ts'
import { Desk } from '../../src/cli/desk.ts'
import { DiskShelf } from '../../src/cli/job-shelf.ts'
import { type Run, type RunOptions, runFile } from '../../src/cli/run-file.ts'
import type { Session } from '../../src/session/session.ts'

export interface Workshop {
  run(text: string, name: string, each?: RunOptions['each']): Run
  /** The job as the desk that ran the lines has it. */
  session(): Session
  /** The job as it stands on the disk. */
  reopened(): Session
  /** Another program that works in the same home, at the same moment. */
  newDesk(): Workshop
}

/** The moment at which lines are carried out, and who works. */
interface Moment {
  now: Date
  by: string | undefined
}

/**
 * A home of its own, where a moment lasts until the file says otherwise, so that two jobs told alike are alike. `#@ 09:30
 * Anna` is a comment to the program; here the lines after it are Anna's, at half past nine of the same day, and
 * `#@ 2030-01-03 09:30` is another day, by nobody who is named.
 */
export function workshop(
  home = newHome(),
  moment: Moment = { now: utc('2030-01-01', '08:00'), by: undefined },
): Workshop {
  const desks = new Map<string, Desk>()
  const desk = () => {
    const key = moment.by ?? ''
    const known = desks.get(key)
    if (known) return known
    const { options } = readArguments([]) as { options: Desk['options'] }
    const opened = new Desk(shelfOf(home, moment), { options, cwd: home, colour: false })
    desks.set(key, opened)
    return opened
  }
  return {
    run(text, name, each) {
      const whole: Run = { done: 0, refused: 0, failure: null }
      for (const { lines, first } of sections(text)) {
        moveTo(moment, lines[0] ?? '')
        const run = runFile(desk(), lines.join('\n'), { name, ...(each && { each }) })
        whole.done += run.done
        whole.refused += run.refused
        if (run.failure) return { ...whole, failure: { ...run.failure, line: run.failure.line + first } }
      }
      return whole
    },
    session: () => {
      const open = desk().current()
      if (!open.ok) throw new Error(open.told.what)
      return open.session
    },
    reopened: () => {
      const shelf = shelfOf(home, moment)
      return shelf.open(shelf.chosen() ?? '')
    },
    newDesk: () => workshop(home, moment),
  }
}

function shelfOf(home: string, moment: Moment): DiskShelf {
  return new DiskShelf(home, { now: () => moment.now, by: moment.by })
}

const MOMENT = /^#@ (?:(\d{4}-\d\d-\d\d) )?(\d\d:\d\d)(?: (.+))?$/

function moveTo(moment: Moment, line: string): void {
  const [, day = moment.now.toISOString().slice(0, 10), time, by] = MOMENT.exec(line.trim()) ?? []
  if (time === undefined) return
  moment.now = utc(day, time)
  moment.by = by
}

/** The lines up to each moment that is named, with how many lines stand before. */
function sections(text: string): { lines: string[]; first: number }[] {
  const found: { lines: string[]; first: number }[] = []
  for (const [index, line] of text.split('\n').entries()) {
    const last = found.at(-1)
    if (last && !MOMENT.test(line.trim())) last.lines.push(line)
    else found.push({ lines: [line], first: index })
  }
  return found
}

function utc(day: string, time: string): Date {
  return new Date(`${day}T${time}:00.000Z`)
}

function newHome(): string {
  const home = mkdtempSync(join(tmpdir(), 'putback-scenario-'))
  onTestFinished(() => rmSync(home, { recursive: true, force: true }))
  return home
}
