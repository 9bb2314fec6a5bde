import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { threadId } from 'node:worker_threads'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type FileSystem, nodeFileSystem } from '../../../src/storage/files/file-system.ts'
import { LockHeld, withLock } from '../../../src/storage/lock/lock.ts'
import { holderHere } from '../../../src/storage/lock/lock-holder.ts'
import { buildProgram, type ChildProgram, type Running, startProgram } from '../../helpers/child-program.ts'
import { faultyFileSystem } from '../support/faulty-file-system.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

let counting: ChildProgram
let holding: ChildProgram
let deadPid: number

beforeAll(async () => {
  counting = await buildProgram('tests/storage/programs/count-under-lock.ts')
  holding = await buildProgram('tests/storage/programs/hold-lock.ts')
  deadPid = spawnSync(process.execPath, ['--version']).pid
})
afterAll(() => {
  counting?.remove()
  holding?.remove()
})

describe('one process', () => {
  test('has the lock while it works, and gives it back', () => {
    const path = join(temporaryFolder(), 'lock')
    const seen = withLock(path, {}, () => JSON.parse(readFileSync(path, 'utf8')))
    expect(seen).toMatchObject({
      pid: process.pid,
      host: hostname(),
      since: expect.stringMatching(/^\d{4}-.*Z$/),
    })
    expect(existsSync(path)).toBe(false)
  })

  test('gives it back when the work fails', () => {
    const path = join(temporaryFolder(), 'lock')
    const failure = new Error('no room')
    expect(() =>
      withLock(path, {}, () => {
        throw failure
      }),
    ).toThrow(failure)
    expect(existsSync(path)).toBe(false)
  })

  test('does not wait for itself', () => {
    const path = join(temporaryFolder(), 'lock')
    withLock(path, {}, () => {
      expect(() => withLock(path, { limit: 600_000 }, () => {})).toThrow(LockHeld)
      expect(existsSync(path)).toBe(true)
    })
  })

  test('does not give back what a person lifted and another took', () => {
    const path = join(temporaryFolder(), 'lock')
    withLock(path, {}, () => writeLock(path, { pid: process.ppid }))
    expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({ pid: process.ppid })
  })

  test('a folder that is not there is the system’s own error', () => {
    const path = join(temporaryFolder(), 'gone', 'lock')
    expect(() => withLock(path, {}, () => {})).toThrow(expect.objectContaining({ code: 'ENOENT' }))
  })

  test('no room for its name: no lock is left behind', () => {
    const folder = temporaryFolder()
    const fs = faultyFileSystem()
    fs.plantIn('writeSync', 'ENOSPC')
    expect(() => withLock(join(folder, 'lock'), { fs }, () => {})).toThrow(
      expect.objectContaining({ code: 'ENOSPC' }),
    )
    expect(readdirSync(folder)).toEqual([])
  })
})

describe('a lock found', () => {
  test('of a living process: waits, then names it', async () => {
    const path = join(temporaryFolder(), 'lock')
    const holder = startProgram(holding, path)
    await holder.said(1)
    const held = heldAt(path)
    expect(held).toMatchObject({
      code: 'lock-held',
      pid: holder.pid,
      host: hostname(),
      elsewhere: false,
      path,
    })
    expect(held.since).toMatch(/^\d{4}-.*Z$/)
    holder.kill()
    await holder.ended
    expect(existsSync(path)).toBe(true)
    expect(withLock(path, { limit: 200 }, () => 'mine')).toBe('mine')
    expect(existsSync(path)).toBe(false)
  })

  test('says who works there, where that was said', () => {
    const path = join(temporaryFolder(), 'lock')
    withLock(path, { by: 'Ida' }, () => {
      expect(heldAt(path)).toMatchObject({ by: 'Ida', pid: process.pid })
    })
    withLock(path, {}, () => expect(heldAt(path).by).toBeNull())
    expect(heldAt(lockFile({ pid: process.ppid, by: '\x1b[2J' })).by).toBeNull()
  })

  test('of a dead process: taken over', () => {
    const path = lockFile({ pid: deadPid })
    expect(withLock(path, { limit: 0 }, () => JSON.parse(readFileSync(path, 'utf8')).pid)).toBe(process.pid)
    expect(readdirSync(join(path, '..'))).toEqual([])
  })

  test('of an earlier process that had our number: taken over', () => {
    const path = lockFile({ pid: process.pid, thread: threadId })
    expect(withLock(path, { limit: 0 }, () => 'mine')).toBe('mine')
  })

  const { boot } = holderHere('any')
  test.skipIf(boot === undefined)(
    'of a process before a loss of power, whose number another has now: taken over',
    () => {
      const path = lockFile({ pid: process.ppid, boot })
      expect(heldAt(path)).toMatchObject({ pid: process.ppid })
      writeLock(path, { pid: process.ppid, boot: '00000000-0000-4000-8000-000000000000' })
      expect(withLock(path, { limit: 0 }, () => 'mine')).toBe('mine')
      // Elsewhere nobody knows which start is the present one.
      writeLock(path, { pid: process.ppid, boot: 'another', host: 'bench-2' })
      expect(heldAt(path)).toMatchObject({ elsewhere: true })
    },
  )

  test('of another thread of this process: not taken over', () => {
    const path = lockFile({ pid: process.pid, thread: threadId + 1000 })
    expect(heldAt(path)).toMatchObject({ pid: process.pid })
    expect(existsSync(path)).toBe(true)
  })

  test('of another computer: never taken over, however old, and a person is told how to lift it', () => {
    const path = lockFile({ pid: deadPid, host: 'bench-2' })
    utimesSync(path, 1, 1)
    const held = heldAt(path)
    expect(held).toMatchObject({ pid: deadPid, host: 'bench-2', elsewhere: true })
    expect(held.message).toContain('bench-2')
    expect(held.message).toContain(`${path} is held`)
    expect(held.message).toContain('delete that file')
    expect(existsSync(path)).toBe(true)
  })

  test.each([
    '',
    '{"pid":',
    'null',
    '{"pid":1,"host":"\\u001b[2J","since":"s","token":"t"}',
    '{"pid":0,"host":"h","since":"s","token":"t"}',
    '{"pid":-1,"host":"h","since":"s","token":"t"}',
  ])('without a legible holder, %j: taken over when it is older than 10 s', (text) => {
    const path = join(temporaryFolder(), 'lock')
    writeFileSync(path, text)
    expect(heldAt(path)).toMatchObject({ pid: null, host: null, since: null, elsewhere: false })
    expect(readFileSync(path, 'utf8')).toBe(text)
    const now = Date.now() / 1000
    utimesSync(path, now - 5, now - 5)
    expect(heldAt(path)).toMatchObject({ pid: null })
    utimesSync(path, now - 11, now - 11)
    expect(withLock(path, { limit: 0 }, () => 'mine')).toBe('mine')
  })

  test('its age is told by the file system’s clock, not by ours', () => {
    const path = join(temporaryFolder(), 'lock')
    writeFileSync(path, '')
    // A file server whose clock is an hour behind.
    const behind = (stat: ReturnType<FileSystem['fstatSync']>) => ({
      size: stat.size,
      ino: stat.ino,
      mtimeMs: stat.mtimeMs - 3_600_000,
    })
    const fs: FileSystem = { ...nodeFileSystem, fstatSync: (fd) => behind(nodeFileSystem.fstatSync(fd)) }
    expect(() => withLock(path, { limit: 30, fs }, () => {})).toThrow(LockHeld)
    expect(existsSync(path)).toBe(true)
  })

  test('whose taker was killed while taking over, and that one’s too', () => {
    const path = lockFile({ pid: deadPid })
    writeLock(`${path}.takeover`, { pid: deadPid })
    writeLock(`${path}.takeover.takeover`, { pid: deadPid })
    expect(withLock(path, { limit: 0 }, () => 'mine')).toBe('mine')
    expect(readdirSync(join(path, '..'))).toEqual([])
  })

  test('at the last level nothing is taken over', () => {
    const path = lockFile({ pid: deadPid })
    const levels = ['.takeover', '.takeover.takeover', '.takeover.takeover.takeover']
    for (const level of levels) writeLock(`${path}${level}`, { pid: deadPid })
    expect(heldAt(path)).toMatchObject({ path: `${path}${levels[2]}`, pid: deadPid })
  })

  test('being taken over by another: waits for that one', () => {
    const path = lockFile({ pid: deadPid })
    writeLock(`${path}.takeover`, { pid: process.ppid })
    expect(heldAt(path)).toMatchObject({ path: `${path}.takeover`, pid: process.ppid })
    expect(existsSync(path)).toBe(true)
  })

  test('a process that slept while it wrote its name does not count itself as the holder', () => {
    const path = join(temporaryFolder(), 'lock')
    const realNow = Date.now
    let sleeps = 1
    const fs: FileSystem = {
      ...nodeFileSystem,
      writeSync: (fd, bytes) => {
        if (sleeps > 0) Date.now = () => realNow() + 6_000
        sleeps -= 1
        return nodeFileSystem.writeSync(fd, bytes)
      },
      unlinkSync: (name) => {
        removed.push(name)
        nodeFileSystem.unlinkSync(name)
      },
    }
    const removed: string[] = []
    try {
      expect(withLock(path, { fs }, () => removed.length)).toBe(2)
    } finally {
      Date.now = realNow
    }
    expect(removed).toEqual([path, `${path}.takeover`, path])
  })
})

describe('many processes', () => {
  test('8 that count to 100 lose nothing', async () => {
    const folder = counter()
    const running = Array.from({ length: 8 }, () => startProgram(counting, folder, 100))
    await letGo(folder, running)
    for (const { ended } of running) expect(await ended).toEqual({ code: 0, signal: null, stderr: '' })
    expect(countIn(folder)).toBe(800)
    expect(existsSync(join(folder, 'lock'))).toBe(false)
  })

  test('some killed while they have the lock: the others go on, nothing is lost', async () => {
    const folder = counter()
    const dying = [5, 10, 20, 40].map((turns) => startProgram(counting, folder, turns, 'dies'))
    const living = Array.from({ length: 4 }, () => startProgram(counting, folder, 50))
    await letGo(folder, [...dying, ...living])
    for (const { ended } of dying) expect((await ended).code).not.toBe(0)
    for (const { ended } of living) expect(await ended).toMatchObject({ code: 0, stderr: '' })
    expect(countIn(folder)).toBe(5 + 10 + 20 + 40 + 4 * 50)
  })

  test('each lock left by a dead one, all want it: only ever one takes it over', async () => {
    const folder = counter()
    const running = Array.from({ length: 6 }, () => startProgram(counting, folder, 50, 'abandons', deadPid))
    await letGo(folder, running)
    for (const { ended } of running) expect(await ended).toMatchObject({ code: 0, stderr: '' })
    expect(countIn(folder)).toBe(300)
    expect(readdirSync(folder).sort()).toEqual(['counter', 'go', 'lock'])
  })
})

function counter(): string {
  const folder = temporaryFolder()
  writeFileSync(join(folder, 'counter'), '0')
  return folder
}

/** Lets the processes start together. */
async function letGo(folder: string, running: Running[]): Promise<void> {
  for (const { said } of running) await said(1)
  writeFileSync(join(folder, 'go'), '')
}

function countIn(folder: string): number {
  return Number(readFileSync(join(folder, 'counter'), 'utf8'))
}

function lockFile(holder: object): string {
  const path = join(temporaryFolder(), 'lock')
  writeLock(path, holder)
  return path
}

function writeLock(path: string, holder: object): void {
  const found = { host: hostname(), since: '2026-11-25T07:30:00.000Z', thread: 0, token: 'theirs', ...holder }
  writeFileSync(path, `${JSON.stringify(found)}\n`)
}

function heldAt(path: string): LockHeld {
  try {
    withLock(path, { limit: 30 }, () => {})
  } catch (error) {
    if (error instanceof LockHeld) return error
    throw error
  }
  return expect.fail('it was not held')
}
