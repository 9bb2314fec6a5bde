import { readFileSync } from 'node:fs'
import { readArguments } from '../../../src/cli/arguments.ts'
import { Desk } from '../../../src/cli/desk.ts'
import { DiskShelf } from '../../../src/cli/job-shelf.ts'
import { runFile } from '../../../src/cli/run-file.ts'
import type { Session } from '../../../src/session/session.ts'

/** The demo job in that folder, told until a section of its file begins. */
export function demoUntil(home: string, until: string): Session {
  const { options } = readArguments([]) as { options: Desk['options'] }
  const shelf = new DiskShelf(home, { now: () => new Date(Date.UTC(2030, 0, 1, 8)) })
  const desk = new Desk(shelf, { options, cwd: home, colour: false })
  const { failure } = runFile(desk, readFileSync('jobs/demo/blue-twin.txt', 'utf8'), {
    name: 'the demo',
    until,
  })
  if (failure) throw new Error(`line ${failure.line}: ${failure.told.what}`)
  const open = desk.current()
  if (!open.ok) throw new Error(open.told.what)
  return open.session
}
