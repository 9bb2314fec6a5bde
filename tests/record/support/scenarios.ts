import { readdirSync, readFileSync } from 'node:fs'
import { basename } from 'node:path'
import type { Entry } from '../../../src/journal/entry.ts'
import type { Session } from '../../../src/session/session.ts'
import { workshop } from '../../scenarios/workshop.ts'
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
  const { run, session } = workshop()
  const { failure } = run(readFileSync(path, 'utf8'), path)
  if (failure) throw new Error(`${path}, line ${failure.line}: ${failure.told.what}`)
  return [...session().entries()]
}
