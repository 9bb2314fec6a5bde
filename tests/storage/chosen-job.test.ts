import { mkdirSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { choose, chosen } from '../../src/storage/chosen-job.ts'
import { createJob } from '../../src/storage/job-folders.ts'
import { faultyFileSystem } from './support/faulty-file-system.ts'
import { recordingFileSystem } from './support/recording-file-system.ts'
import { temporaryFolder } from './support/temporary-folder.ts'

test('the last choice holds', () => {
  const home = homeWith('boat', 'mower')
  expect(chosen(home)).toBeNull()
  choose(home, 'boat')
  choose(home, 'mower')
  expect(chosen(home)).toBe('mower')
  expect(readdirSync(home).sort()).toEqual(['.chosen', 'boat', 'mower'])
})

test('a job that is gone is not chosen any more', () => {
  const home = homeWith('boat')
  choose(home, 'boat')
  rmSync(join(home, 'boat'), { recursive: true })
  expect(chosen(home)).toBeNull()
})

test.each([
  '',
  '\n',
  '..',
  '.',
  '../boat',
  'boat/../boat',
  'boat\\',
  'bo\0at',
  'boat\nboat',
  'none',
  `${'x'.repeat(5000)}`,
])('a note %j chooses nothing', (text) => {
  const home = homeWith('boat')
  writeFileSync(join(home, '.chosen'), text)
  expect(chosen(home)).toBeNull()
})

test('a note edited by hand, without or with another line end, is good enough', () => {
  const home = homeWith('boat')
  for (const text of ['boat', 'boat\r\n']) {
    writeFileSync(join(home, '.chosen'), text)
    expect(chosen(home)).toBe('boat')
  }
})

test('a folder in the place of the note, or a link in the place of the job', () => {
  const home = homeWith('boat')
  mkdirSync(join(home, '.chosen'))
  expect(chosen(home)).toBeNull()
  rmSync(join(home, '.chosen'), { recursive: true })
  if (process.platform === 'win32') return
  symlinkSync(join(homeWith('theirs'), 'theirs'), join(home, 'link'))
  choose(home, 'link')
  expect(chosen(home)).toBeNull()
})

test('is on the disk before it takes the old one’s place', () => {
  const calls: string[] = []
  choose(homeWith('boat'), 'boat', recordingFileSystem(calls))
  expect(calls).toEqual(['writeSync', 'fsyncSync', 'renameSync', 'fsyncSync'])
})

test('any call may fail: the old choice or the new one, nothing else left behind', () => {
  for (let at = 1; ; at += 1) {
    const home = homeWith('boat', 'mower')
    choose(home, 'boat')
    const fs = faultyFileSystem()
    fs.plant({ at, errno: 'EIO' })
    let failed = false
    try {
      choose(home, 'mower', fs)
    } catch {
      failed = true
    }
    if (fs.hit === null) {
      expect([at, chosen(home)]).toEqual([expect.any(Number), 'mower'])
      expect(at).toBeGreaterThan(5)
      break
    }
    expect(['boat', 'mower']).toContain(chosen(home))
    if (!failed) expect(chosen(home)).toBe('mower')
    expect(readdirSync(home).sort()).toEqual(['.chosen', 'boat', 'mower'])
  }
})

function homeWith(...names: string[]): string {
  const home = temporaryFolder()
  for (const name of names) createJob(home, name)
  return home
}
