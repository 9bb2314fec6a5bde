import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { parseEntry } from '../../src/journal/entry.ts'
import { readLines } from '../../src/storage/journal/line.ts'
import { buildProgram, type ChildProgram, startProgram } from '../helpers/child-program.ts'
import { off } from '../support/commands.ts'
import { sessionIn, sessionWith, tell } from './support/sessions.ts'

const EACH = 500
const BAGS = [2, 3, 4, 5, 6, 7, 8, 9]

let taking: ChildProgram

beforeAll(async () => {
  taking = await buildProgram('tests/session/programs/take-from-one-bag.ts')
})
afterAll(() => taking?.remove())

test('8 programs record 500 entries each and more, out of one bag: none lost, none decided on what was no longer so', async () => {
  // Each tries to take one more than 500, and there is one too few for all to have it.
  const bolts = 8 * EACH + 7
  const session = sessionWith({ do: 'begin-strip', title: 'cover off' }, off(bolts, 'cover bolts'))
  const folder = dirname(session.store.path)
  for (const _ of BAGS) tell(session, { do: 'open-container', kind: 'bag' })
  const before = session.entries().length

  const running = BAGS.map((bag) => startProgram(taking, folder, bag, EACH + 1))
  await Promise.all(running.map((one) => one.said(1)))
  writeFileSync(join(folder, 'go'), '')
  for (const { ended } of running) expect(await ended).toEqual({ code: 0, signal: null, stderr: '' })
  const said = running.map((one) => one.lines().slice(1))
  const refusals = said.flat().filter((line) => line.startsWith('refused'))
  expect(refusals).toEqual(['refused: nothing-there'])

  const { entries, problem } = readLines(readFileSync(session.store.path), parseEntry)
  expect(problem).toBeNull()
  expect(entries).toHaveLength(before + bolts)
  const ids = entries.map(({ id }) => id)
  expect(new Set(ids).size).toBe(ids.length)
  const recorded = said.map((lines) => lines.filter((line) => !refusals.includes(line)))
  for (const own of recorded) {
    expect(own.length).toBeGreaterThanOrEqual(EACH)
    const those = new Set(own)
    expect(ids.filter((id) => those.has(id))).toEqual(own)
  }

  const after = sessionIn(folder)
  expect(after.unlawful).toBeNull()
  const where = after.state.ledger.accounts.get('p1')?.at
  expect(where?.get('c1') ?? 0).toBe(0)
  expect(BAGS.map((bag) => where?.get(`c${bag}`))).toEqual(recorded.map(({ length }) => length))
  rmSync(join(folder, 'go'))
  expect(readdirSync(folder)).toEqual(['journal.log'])
}, 120_000)
