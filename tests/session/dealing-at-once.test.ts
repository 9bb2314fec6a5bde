import { writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Entry } from '../../src/journal/entry.ts'
import { fold } from '../../src/journal/fold.ts'
import { buildProgram, type ChildProgram, startProgram } from '../helpers/child-program.ts'
import { sessionIn, sessionWith, tell } from './support/sessions.ts'

let dealing: ChildProgram

beforeAll(async () => {
  dealing = await buildProgram('tests/session/programs/deal-numbers.ts')
})
afterAll(() => dealing?.remove())

test('4 programs that deal, open, void and take back at once are given no number twice', async () => {
  const folder = dirname(sessionWith().store.path)
  const running = [11, 22, 33, 44].map((seed) => startProgram(dealing, folder, seed, 150))
  await Promise.all(running.map((one) => one.said(1)))
  writeFileSync(join(folder, 'go'), '')
  for (const { ended } of running) expect(await ended).toEqual({ code: 0, signal: null, stderr: '' })
  const said = running.flatMap(({ lines }) => lines().map((line) => JSON.parse(line) as Entry | string))
  const recorded = said.filter((one): one is Entry => typeof one !== 'string')

  const given = recorded.flatMap(numbersGiven)
  expect(given.length).toBeGreaterThan(200)
  // The containers of labels have the numbers of these: what was printed is given once, and opened afterwards.
  expect(new Set(given).size).toBe(given.length)
  expect(Math.max(...given)).toBe(given.length)

  const session = sessionIn(folder)
  expect(session.unlawful).toBeNull()
  // The opening of the job, and what the four were told.
  expect(session.entries()).toHaveLength(1 + recorded.length)
  const { blanks, containers } = fold(session.entries())
  expect([...blanks.keys()].filter((no) => containers.has(no))).toEqual([])
})

test('one that has not yet read what the other did decides on it all the same', () => {
  const one = sessionWith({ do: 'deal-labels', count: 3 })
  const other = sessionIn(dirname(one.store.path))
  tell(one, { do: 'void-container', container: 2, reason: 'torn' }, { do: 'deal-labels', count: 2 })
  expect(other.send({ do: 'open-container', kind: 'bag', no: 2 })).toMatchObject({
    kind: 'refused',
    refusal: { code: 'container-void', container: 2 },
  })
  tell(other, { do: 'open-container', kind: 'bag', no: 3 }, { do: 'open-container', kind: 'bag' })
  expect(one.send({ do: 'void-container', container: 3, reason: 'torn' }).kind).toBe('recorded')
  tell(one, { do: 'deal-labels', count: 1 })
  expect([...one.state.blanks.keys()]).toEqual([1, 2, 4, 5, 7])
  expect([...one.state.containers.keys()]).toEqual([3, 6])
})

/** The numbers that an entry takes from those never given before. */
function numbersGiven(entry: Entry, _index: number, all: readonly Entry[]): number[] {
  if (entry.type === 'labels-dealt')
    return Array.from({ length: entry.to - entry.from + 1 }, (_, index) => entry.from + index)
  if (entry.type !== 'container-opened') return []
  const { no } = entry.container
  const isLabel = all.some((one) => one.type === 'labels-dealt' && one.from <= no && no <= one.to)
  return isLabel ? [] : [no]
}
