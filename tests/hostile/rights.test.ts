import { lstatSync, readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { setAsideTornEnd } from '../../src/storage/journal/recover.ts'
import { withLock } from '../../src/storage/lock/lock.ts'
import { enterJob } from '../../src/storage/lock/presence.ts'
import { benchWithJob } from '../cli/support/bench.ts'
import { phone } from '../support/photos/phone.ts'

// POSIX.1, chmod: bits 0o077 are the rights of the group and of all others. With a mask of nothing, what a program makes has
// all the rights that it asked for.
describe.skipIf(process.platform === 'win32')('whatever the mask of the process', () => {
  let mask = 0
  beforeEach(() => {
    mask = process.umask(0)
  })
  afterEach(() => {
    process.umask(mask)
  })

  test('what is made is for this user only', async () => {
    const on = benchWithJob('begin cover off', 'off 4 M6x20 bolts into new bag')
    const own = join(on.home, '..')
    const home = join(own, 'made', 'jobs')
    const at = (...words: string[]) => on.send('--home', home, ...words)
    const { folder, shot } = phone()
    shot('a.jpg', '10:00:00')
    await at('new', 'job', 'blue twin')
    await at('begin cover off')
    await at('want 2 clips')
    for (const line of [
      'labels machine',
      'labels machine to deep/er/tag.pdf',
      'buy csv',
      'buy csv deep/list.csv',
      'labels usual on a4-8',
    ]) {
      expect((await at(line)).err, line).toBe('')
    }
    expect((await at(`photos import ${folder}`)).code).toBe(0)
    expect((await at('backup')).err).toBe('')
    on.shelf.setSound(false)
    const job = join(home, 'blue-twin')
    const presence = enterJob(job)
    withLock(join(job, 'journal.lock'), {}, () => {
      writeFileSync(join(job, 'journal.log'), 'torn', { flag: 'a' })
      setAsideTornEnd(join(job, 'journal.log'), lstatSync(join(job, 'journal.log')).size - 4)
      const made = [...everythingIn(join(own, 'made')), ...everythingIn(on.home)]
      expect(made.length).toBeGreaterThan(15)
      expect(made.filter(({ mode }) => (mode & 0o077) !== 0)).toEqual([])
    })
    presence.leave()
  })
})

function everythingIn(folder: string): { path: string; mode: number }[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name)
    return [{ path, mode: lstatSync(path).mode }, ...(entry.isDirectory() ? everythingIn(path) : [])]
  })
}
