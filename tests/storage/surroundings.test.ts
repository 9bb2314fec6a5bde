import { createHash } from 'node:crypto'
import { chmodSync, mkdirSync, renameSync, symlinkSync, writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { lookAround } from '../../src/storage/surroundings.ts'
import { temporaryFolder } from './support/temporary-folder.ts'

const PICTURE = Buffer.from('a picture, as far as anybody here knows')
const recorded = { file: '20300101-080000.jpg', sha256: createHash('sha256').update(PICTURE).digest('hex') }
const isWindows = process.platform === 'win32'

test('nothing to tell of a job as it was made', () => {
  expect(lookAround(job(), [recorded])).toEqual([])
})

test('a picture that is gone, one that changed, and a folder in its place', () => {
  const folder = job()
  const path = join(folder, 'photos', recorded.file)
  writeFileSync(path, 'another')
  expect(lookAround(folder, [recorded])).toEqual([{ kind: 'picture-changed', path }])
  const missing = { file: '20300101-080001.jpg', sha256: recorded.sha256 }
  mkdirSync(join(folder, 'photos', missing.file))
  expect(lookAround(folder, [missing, { ...missing, file: 'gone.jpg' }])).toEqual([
    { kind: 'picture-missing', path: join(folder, 'photos', missing.file) },
    { kind: 'picture-missing', path: join(folder, 'photos', 'gone.jpg') },
  ])
})

test.skipIf(isWindows)('links in the place of a picture and of the folder of pictures', () => {
  const folder = job()
  const path = join(folder, 'photos', recorded.file)
  renameSync(path, join(folder, 'elsewhere.jpg'))
  symlinkSync(join(folder, 'elsewhere.jpg'), path)
  expect(lookAround(folder, [recorded])).toEqual([{ kind: 'link', path }])
  renameSync(join(folder, 'photos'), join(folder, 'others'))
  symlinkSync(join(folder, 'others'), join(folder, 'photos'))
  expect(lookAround(folder, [recorded])).toEqual([{ kind: 'link', path: join(folder, 'photos') }])
})

test.skipIf(isWindows)('rights that are wider than the user’s own', () => {
  const folder = job()
  chmodSync(folder, 0o750)
  chmodSync(join(folder, 'journal.log'), 0o604)
  expect(lookAround(folder, [])).toEqual([
    { kind: 'open-to-others', path: folder },
    { kind: 'open-to-others', path: join(folder, 'journal.log') },
  ])
})

test('what was set aside, cut off or kept, and drafts of killed programs', () => {
  const folder = job()
  const names = [
    'journal.before-mending-1',
    'journal.cut-2',
    'journal.log.0f-1.tmp',
    'journal.torn-1',
    'notes.txt',
  ]
  for (const name of names) writeFileSync(join(folder, name), 'bytes')
  expect(lookAround(folder, [])).toEqual([
    { kind: 'set-aside', path: join(folder, names[0] as string), bytes: 5 },
    { kind: 'set-aside', path: join(folder, names[1] as string), bytes: 5 },
    { kind: 'draft', path: join(folder, names[2] as string) },
    { kind: 'set-aside', path: join(folder, names[3] as string), bytes: 5 },
  ])
})

test('a lock of the living, of the dead, of another machine, and one that names nobody', () => {
  const since = '2030-01-01T08:00:00.000Z'
  const holder = (pid: number, host = hostname()) =>
    JSON.stringify({ pid, host, since, thread: 0, token: 't' })
  // No system has a process of that number: Linux stops at 2^22, the others below 2^31.
  const dead = 2 ** 31 - 1
  const locks: [string, string][] = [
    [holder(process.pid), 'living'],
    [holder(dead), 'dead'],
    [holder(1, 'another-bench'), 'elsewhere'],
    ['garbled', 'unnamed'],
  ]
  for (const [text, living] of locks) {
    const folder = job()
    writeFileSync(join(folder, 'journal.lock'), text)
    expect(lookAround(folder, [])).toMatchObject([{ kind: 'lock', holder: living }])
  }
})

function job(): string {
  const folder = join(temporaryFolder(), 'job')
  mkdirSync(join(folder, 'photos'), { recursive: true, mode: 0o700 })
  writeFileSync(join(folder, 'journal.log'), '', { mode: 0o600 })
  writeFileSync(join(folder, 'photos', recorded.file), PICTURE, { mode: 0o600 })
  return folder
}
