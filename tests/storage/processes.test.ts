import { existsSync, readdirSync, readFileSync, utimesSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { readLines } from '../../src/storage/line.ts'
import { openJournal } from '../../src/storage/open-journal.ts'
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

test('writers killed 20 times: every entry they were told is recorded is there, none by half', async () => {
  const folder = temporaryFolder()
  const acknowledged: string[] = []
  for (let round = 0; round < 10; round += 1) {
    const pair = ['left', 'right'].map((by) =>
      startProgram(appending, folder, `${by}-${round}`, 'endless', 30_000),
    )
    await Promise.all(pair.map(({ said }) => said(3)))
    await new Promise((resolve) => setTimeout(resolve, Math.random() * 40))
    for (const { kill } of pair) kill()
    for (const { ended } of pair) expect(await ended).toMatchObject({ stderr: '' })
    acknowledged.push(...pair.flatMap(({ lines }) => lines()))
    // Killed between making the lock and naming itself in it: do not wait here until it counts as abandoned.
    const lock = join(folder, 'journal.lock')
    if (existsSync(lock)) utimesSync(lock, 1, 1)
  }
  const store = openJournal(folder, { parse: parseNote })
  const ids = store.entries().map(({ id }) => id)
  expect(store.problem).toBeNull()
  expect(acknowledged.length).toBeGreaterThanOrEqual(60)
  expect(acknowledged.filter((id) => !ids.includes(id))).toEqual([])
  expect(new Set(ids).size).toBe(ids.length)
  // At most one entry of each killed writer was recorded without its being told.
  expect(ids.length - acknowledged.length).toBeLessThanOrEqual(20)
})
