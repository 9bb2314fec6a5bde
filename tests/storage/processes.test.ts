import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { readLines } from '../../src/storage/journal/line.ts'
import { buildProgram, type ChildProgram, startProgram } from '../helpers/child-program.ts'
import { parseNote } from './support/notes.ts'
import { temporaryFolder } from './support/temporary-folder.ts'

let appending: ChildProgram

beforeAll(async () => {
  appending = await buildProgram('tests/storage/programs/append-notes.ts')
})
afterAll(() => appending?.remove())

test('4 processes append 200 entries each: 800, all different, the chain whole', async () => {
  const folder = temporaryFolder()
  const running = ['a', 'b', 'c', 'd'].map((by) => startProgram(appending, folder, by, 200))
  for (const { ended } of running) expect(await ended).toEqual({ code: 0, signal: null, stderr: '' })
  const { entries, problem } = readLines(readFileSync(join(folder, 'journal.log')), parseNote)
  expect(problem).toBeNull()
  expect(entries).toHaveLength(800)
  expect(new Set(entries.map(({ id }) => id)).size).toBe(800)
  for (const { lines } of running) {
    const ids = new Set(lines())
    expect(entries.map(({ id }) => id).filter((id) => ids.has(id))).toEqual(lines())
  }
  expect(readdirSync(folder)).toEqual(['journal.log'])
})
