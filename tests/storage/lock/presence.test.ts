import { spawnSync } from 'node:child_process'
import { chmodSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, onTestFinished, test, vi } from 'vitest'
import { enterJob } from '../../../src/storage/lock/presence.ts'
import { isAlive } from '../../../src/storage/lock/process-alive.ts'
import { buildProgram, type ChildProgram, startProgram } from '../../helpers/child-program.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

let staying: ChildProgram
let deadPid: number

beforeAll(async () => {
  staying = await buildProgram('tests/storage/programs/be-present.ts')
  deadPid = spawnSync(process.execPath, ['--version']).pid
})
afterAll(() => staying?.remove())

const own = `journal.open-${process.pid}`

describe('one program', () => {
  test('is alone, and leaves nothing behind', () => {
    const folder = temporaryFolder()
    const presence = enterJob(folder)
    expect(presence.othersHere()).toBe(false)
    expect(JSON.parse(readFileSync(join(folder, own), 'utf8'))).toMatchObject({
      pid: process.pid,
      host: hostname(),
    })
    presence.leave()
    expect(readdirSync(folder)).toEqual([])
    expect(presence.othersHere()).toBe(false)
  })

  test('may leave twice, or when its folder is gone', () => {
    const presence = enterJob(join(temporaryFolder(), 'gone'))
    expect(presence.othersHere()).toBe(false)
    presence.leave()
    expect(() => presence.leave()).not.toThrow()
  })
})

test('two programs see each other; one that was killed is cleared away', async () => {
  const folder = temporaryFolder()
  const presence = enterJob(folder)
  const other = startProgram(staying, folder)
  await other.said(1)
  expect(presence.othersHere()).toBe(true)
  expect(readdirSync(folder).sort()).toEqual([own, `journal.open-${other.pid}`].sort())
  presence.leave()
  expect(presence.othersHere()).toBe(true)
  other.kill()
  await other.ended
  // It could not leave: its sign still lies there.
  expect(readdirSync(folder)).toEqual([`journal.open-${other.pid}`])
  expect(presence.othersHere()).toBe(false)
  expect(readdirSync(folder)).toEqual([])
})

describe('a sign that lies in the folder', () => {
  const sign = { host: hostname(), since: '2030-01-01T08:00:00.000Z', thread: 0, token: 'theirs' }
  const named = (facts: object) => JSON.stringify({ ...sign, ...facts })

  test.each<[string, () => string, { seen: boolean; stays: boolean }]>([
    ['of a living process', () => named({ pid: process.ppid }), { seen: true, stays: true }],
    ['of a dead process', () => named({ pid: deadPid }), { seen: false, stays: false }],
    [
      'of another machine, whose process has the number of a living one here',
      () => named({ pid: process.ppid, host: 'another-bench' }),
      { seen: false, stays: true },
    ],
    ['with nothing in it', () => '', { seen: false, stays: true }],
    ['with something else in it', () => '[1]', { seen: false, stays: true }],
    ['without a process', () => named({}), { seen: false, stays: true }],
    ['of a process group', () => named({ pid: -1 }), { seen: false, stays: true }],
  ])('%s', (_, content, { seen, stays }) => {
    const folder = temporaryFolder()
    const presence = enterJob(folder)
    writeFileSync(join(folder, 'journal.open-1'), content())
    expect(presence.othersHere()).toBe(seen)
    expect(readdirSync(folder).includes('journal.open-1')).toBe(stays)
  })

  test('and cannot be read is nobody, and hides nobody', () => {
    const folder = temporaryFolder()
    const presence = enterJob(folder)
    mkdirSync(join(folder, 'journal.open-1'))
    expect(presence.othersHere()).toBe(false)
    writeFileSync(join(folder, 'journal.open-2'), named({ pid: process.ppid }))
    expect(presence.othersHere()).toBe(true)
  })

  test('other files are no signs', () => {
    const folder = temporaryFolder()
    const presence = enterJob(folder)
    for (const name of ['journal.log', 'journal.lock', 'open-1'])
      writeFileSync(join(folder, name), named({ pid: process.ppid }))
    expect(presence.othersHere()).toBe(false)
  })
})

describe('where this program cannot write, it is not seen and sees the others', () => {
  const living = () =>
    JSON.stringify({ pid: process.ppid, host: hostname(), since: '2030', thread: 0, token: 't' })

  test('its own sign cannot be made', () => {
    const folder = temporaryFolder()
    mkdirSync(join(folder, own))
    const presence = enterJob(folder)
    expect(presence.othersHere()).toBe(false)
    writeFileSync(join(folder, 'journal.open-1'), living())
    expect(presence.othersHere()).toBe(true)
    presence.leave()
    expect(readdirSync(folder).sort()).toEqual(['journal.open-1', own].sort())
  })

  test.skipIf(process.getuid?.() === 0 || process.platform === 'win32')('a read-only folder', () => {
    const folder = temporaryFolder()
    writeFileSync(join(folder, 'journal.open-1'), living())
    chmodSync(folder, 0o500)
    const presence = enterJob(folder)
    expect(presence.othersHere()).toBe(true)
    expect(() => presence.leave()).not.toThrow()
    expect(readdirSync(folder)).toEqual(['journal.open-1'])
    chmodSync(folder, 0o700)
  })
})

describe('whether a process is there', () => {
  test.each<[string, () => number, boolean]>([
    ['this one', () => process.pid, true],
    ['the one that started it', () => process.ppid, true],
    ['one that has ended', () => deadPid, false],
    // No Unix system gives out numbers this high.
    ['a number that no process has', () => 2 ** 31 - 1, false],
  ])('%s', (_, pid, alive) => {
    expect(isAlive(pid())).toBe(alive)
  })
  test('one of somebody else, which may not be signalled', () => {
    const kill = vi.spyOn(process, 'kill').mockImplementation(() => {
      throw Object.assign(new Error('not permitted'), { code: 'EPERM' })
    })
    onTestFinished(() => kill.mockRestore())
    expect(isAlive(1)).toBe(true)
  })
})
