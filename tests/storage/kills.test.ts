import { afterAll, beforeAll, expect, test } from 'vitest'
import { buildProgram, type ChildProgram } from '../helpers/child-program.ts'
import { DEATHS_IN_CALLS, killWorkers, randomDeaths } from './support/killed-work.ts'

let working: ChildProgram

beforeAll(async () => {
  working = await buildProgram('tests/storage/programs/work-until-killed.ts')
})
afterAll(() => working?.remove())

test('300 kills at any moment: every entry that was said to be recorded is there, none by half', async () => {
  const seen = await killWorkers(working, randomDeaths(50, 6), { seed: 1, atOnce: 4 })
  expect(seen).toMatchObject({ kills: 300, lost: [], broken: [] })
  expect(seen.acknowledged).toBeGreaterThan(300)
  // They did hit what they are about.
  expect(seen.locked).toBeGreaterThan(50)
  expect(seen.untold).toBeGreaterThan(0)
}, 300_000)

test('killed in each call to the file system that recording makes, while taking over and setting aside as well', async () => {
  const seen = await killWorkers(working, DEATHS_IN_CALLS, { seed: 2, atOnce: 4 })
  expect(seen).toMatchObject({ kills: DEATHS_IN_CALLS.flat().length, lost: [], broken: [] })
  expect(seen.torn).toBeGreaterThan(10)
  expect(seen.unnamed).toBeGreaterThan(1)
}, 300_000)
