import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { readArguments } from '../../../src/cli/arguments.ts'
import { Desk } from '../../../src/cli/desk.ts'
import { DiskShelf } from '../../../src/cli/job-shelf.ts'
import { runFile } from '../../../src/cli/run-file.ts'
import type { Entry } from '../../../src/journal/entry.ts'
import type { Session } from '../../../src/session/session.ts'
import { sessionOf } from './session-of.ts'

/** The files of whole jobs, the demo first. */
export const scenarios = [
  'jobs/demo/blue-twin.txt',
  ...readdirSync('tests/scenarios')
    .filter((name) => name.endsWith('.txt'))
    .map((name) => `tests/scenarios/${name}`),
].map((path) => ({ name: basename(path), path }))

/** A job told whole from its file. Each file is run once, in a home of its own. */
export function scenario(path: string): Session {
  const entries = told.get(path) ?? run(path)
  told.set(path, entries)
  return sessionOf(entries)
}

const told = new Map<string, readonly Entry[]>()

function run(path: string): readonly Entry[] {
  const { options } = readArguments([]) as { options: Desk['options'] }
  const home = mkdtempSync(join(tmpdir(), 'putback-record-'))
  try {
    const shelf = new DiskShelf(home, { now: () => new Date(Date.UTC(2030, 0, 1, 8)) })
    const desk = new Desk(shelf, { options, cwd: home, colour: false })
    const { failure } = runFile(desk, readFileSync(path, 'utf8'), { name: path })
    if (failure) throw new Error(`line ${failure.line}: ${failure.told.what}`)
    const open = desk.current()
    if (!open.ok) throw new Error(open.told.what)
    return [...open.session.entries()]
  } finally {
    rmSync(home, { recursive: true, force: true })
  }
}
