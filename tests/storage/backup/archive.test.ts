import { createHash } from 'node:crypto'
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { nodeArchiveFileSystem } from '../../../src/storage/backup/archive-file-system.ts'
import { BadArchive } from '../../../src/storage/backup/bad-archive.ts'
import { openArchive } from '../../../src/storage/backup/read-archive.ts'
import { restoreArchive } from '../../../src/storage/backup/restore-archive.ts'
import { ArchiveExists, writeArchive } from '../../../src/storage/backup/write-archive.ts'
import { slugOf } from '../../../src/storage/job-slug.ts'
import { writeLine } from '../../../src/storage/journal/line.ts'
import { LockHeld, withLock } from '../../../src/storage/lock/lock.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { contents, journalOf, keepJob, PICTURES } from './support/kept-job.ts'
import { readZip } from './support/zip-format.ts'

const NOW = new Date(2030, 0, 2, 17, 5)
const OPTIONS = { now: NOW, program: '0.1.0' }

function bench() {
  const home = temporaryFolder()
  const job = keepJob(home)
  const folder = join(home, 'stick')
  mkdirSync(folder)
  return { home, job, folder, write: () => writeArchive(job, { folder }, OPTIONS) }
}

async function restored(path: string, home = temporaryFolder()) {
  const archive = await openArchive(path)
  try {
    return await restoreArchive(archive, home)
  } finally {
    archive.close()
  }
}

describe('an archive', () => {
  test('has its job, its day and its minute in its name, and takes no name that is taken', async () => {
    const { folder, write } = bench()
    const first = await write()
    expect(first.path).toBe(join(folder, '7-blue-twin-2030-01-02-1705.zip'))
    const bytes = readFileSync(first.path)
    expect((await write()).path).toBe(join(folder, '7-blue-twin-2030-01-02-1705-2.zip'))
    expect(readFileSync(first.path)).toEqual(bytes)
    expect(readdirSync(folder)).toHaveLength(2)
  })

  test('is never written over a file that was named', async () => {
    const { job, folder } = bench()
    const file = join(folder, 'twin.zip')
    expect((await writeArchive(job, { file }, OPTIONS)).path).toBe(file)
    const before = contents(folder)
    await expect(writeArchive(job, { file }, OPTIONS)).rejects.toThrow(ArchiveExists)
    expect(contents(folder)).toEqual(before)
  })

  test('gets no name where the disk keeps one byte of a picture otherwise than it was given', async () => {
    const { job, folder } = bench()
    const picture = Object.values(PICTURES)[0] ?? Buffer.alloc(0)
    const middle = picture.length >> 1
    let spoiled = 0
    const spoiling = {
      ...nodeArchiveFileSystem,
      writeSync: (fd: number, bytes: Uint8Array) => {
        const copy = Buffer.from(bytes)
        if (spoiled === 0 && copy.equals(picture)) {
          copy[middle] = (copy[middle] ?? 0) ^ 1
          spoiled += 1
        }
        return nodeArchiveFileSystem.writeSync(fd, copy)
      },
    }
    await expect(writeArchive(job, { folder }, { ...OPTIONS, fs: spoiling })).rejects.toThrow(BadArchive)
    expect([spoiled, readdirSync(folder)]).toEqual([1, []])
  })

  test('is a ZIP file that any reader opens: the pictures as they are, the journal packed', async () => {
    const { job, write } = bench()
    const { path, bytes, manifest } = await write()
    const files = readZip(readFileSync(path))
    expect(files.map(({ name, method }) => [name, method])).toEqual([
      ['journal.log', 8],
      ['photos/20300101-081500-2.jpg', 0],
      ['photos/20300101-081500.jpg', 0],
      ['photos/20300101-081600.png', 0],
      ['manifest.json', 8],
    ])
    for (const { name, bytes } of files.slice(0, -1)) {
      expect(bytes).toEqual(readFileSync(join(job, name)))
      const sha256 = createHash('sha256').update(bytes).digest('hex')
      expect(manifest.files).toContainEqual({ name, bytes: bytes.length, sha256 })
    }
    expect(JSON.parse(files.at(-1)?.bytes.toString() ?? '')).toEqual(manifest)
    expect(manifest).toMatchObject({
      kind: 'putback back-up',
      version: 1,
      made: NOW.toISOString(),
      program: '0.1.0',
      folder: 'blue-twin',
      job: { no: 7, name: 'blue twin', id: 'e1', entries: 2, hurt: null },
      missing: [],
    })
    expect(statSync(path).size).toBe(bytes)
  })

  test.skipIf(process.platform === 'win32')('is for this user only', async () => {
    const { write } = bench()
    expect(statSync((await write()).path).mode & 0o777).toBe(0o600)
  })

  test('of a job without pictures, or without an entry, is one all the same', async () => {
    const home = temporaryFolder()
    const job = keepJob(home, { pictures: {} })
    writeFileSync(join(job, 'journal.log'), '')
    rmSync(join(job, 'photos'), { recursive: true })
    const { path, manifest } = await writeArchive(job, { folder: home }, OPTIONS)
    expect(path).toBe(join(home, 'blue-twin-2030-01-02-1705.zip'))
    expect(manifest.job).toEqual({ no: null, name: null, id: null, entries: 0, hurt: null })
    const other = temporaryFolder()
    expect(await restored(path, other)).toMatchObject({ kind: 'restored', folder: 'blue-twin' })
    expect(contents(join(other, 'blue-twin'))).toEqual({ 'journal.log': '' })
  })

  test('leaves out a picture that is gone, is a link or cannot be read, and names it', async () => {
    const { job, folder, write } = bench()
    const [first, second, third] = Object.keys(PICTURES).map((name) => join(job, 'photos', name))
    rmSync(first as string)
    rmSync(second as string)
    writeFileSync(join(folder, 'elsewhere.jpg'), 'not of this job')
    symlinkSync(join(folder, 'elsewhere.jpg'), second as string)
    rmSync(third as string)
    mkdirSync(third as string)
    const { path, manifest } = await write()
    expect(manifest.missing).toEqual([
      { name: 'photos/20300101-081500-2.jpg', why: 'gone' },
      { name: 'photos/20300101-081500.jpg', why: 'gone' },
      { name: 'photos/20300101-081600.png', why: 'gone' },
    ])
    expect(readZip(readFileSync(path)).map(({ name }) => name)).toEqual(['journal.log', 'manifest.json'])
  })

  test('has no picture from behind a link that lies in the place of their folder', async () => {
    const { job, folder, write } = bench()
    renameSync(join(job, 'photos'), join(folder, 'elsewhere'))
    symlinkSync(join(folder, 'elsewhere'), join(job, 'photos'))
    const { manifest } = await write()
    expect(manifest.missing.map(({ why }) => why)).toEqual(['gone', 'gone', 'gone'])
    expect(manifest.files.map(({ name }) => name)).toEqual(['journal.log'])
  })

  test('keeps a picture that has other bytes than the record says, and marks it', async () => {
    const { job, write } = bench()
    writeFileSync(join(job, 'photos', '20300101-081600.png'), 'scratched')
    const { path, manifest } = await write()
    const marked = manifest.files.filter(({ changed }) => changed).map(({ name }) => name)
    expect(marked).toEqual(['photos/20300101-081600.png'])
    const home = temporaryFolder()
    await restored(path, home)
    expect(contents(join(home, 'blue-twin', 'photos'))['20300101-081600.png']).toBe('scratched')
  })

  test('keeps what was set aside, and nothing else that lies in the folder', async () => {
    const { job, write } = bench()
    const aside = ['journal.torn-1', 'journal.before-mending-2', 'journal.merged-1', 'journal.cut-1']
    for (const name of aside) writeFileSync(join(job, name), `what was in ${name}`)
    for (const name of ['to-buy.csv', 'journal.old', 'journal.open-4711', 'journal.torn-1.bak'])
      writeFileSync(join(job, name), 'x')
    writeFileSync(join(job, 'photos', 'own.jpg'), 'not in the record')
    const names = (await write()).manifest.files.map(({ name }) => name)
    expect(names.filter((name) => !name.startsWith('photos/')).sort()).toEqual(
      [...aside, 'journal.log'].sort(),
    )
    expect(names.filter((name) => name.startsWith('photos/'))).toHaveLength(3)
  })

  test('of a hurt journal is that journal, with every picture that lies there', async () => {
    const { home, job, write } = bench()
    const [first, second] = journalOf().split('\n')
    const hurt = `${first}\n${second?.replace('081600', '081601')}\n`
    writeFileSync(join(job, 'journal.log'), hurt)
    const { path, manifest } = await write()
    expect(manifest.job).toMatchObject({ no: 7, entries: 1, hurt: { line: 2, why: 'checksum' } })
    expect(manifest.files.map(({ name }) => name)).toEqual([
      'journal.log',
      ...Object.keys(PICTURES)
        .sort()
        .map((name) => `photos/${name}`),
    ])
    rmSync(job, { recursive: true })
    expect(await restored(path, home)).toMatchObject({ job: { hurt: { line: 2, why: 'checksum' } } })
    expect(readFileSync(join(home, 'blue-twin', 'journal.log'), 'utf8')).toBe(hurt)
  })

  test('of a journal that a disk left full of zeros is read back and restored', async () => {
    const { home, job, write } = bench()
    const zeros = Buffer.concat([readFileSync(join(job, 'journal.log')), Buffer.alloc(3 << 20)])
    writeFileSync(join(job, 'journal.log'), zeros)
    writeFileSync(join(job, 'journal.torn-1'), Buffer.alloc(2 << 20))
    const { path } = await write()
    rmSync(job, { recursive: true })
    await restored(path, home)
    expect(readFileSync(join(home, 'blue-twin', 'journal.log')).equals(zeros)).toBe(true)
  })

  test('waits for whoever is writing, and says who it is', async () => {
    const { job, folder, write } = bench()
    const lock = join(job, 'journal.lock')
    const made = withLock(lock, {}, () => write())
    await expect(made).rejects.toThrow(LockHeld)
    expect(readdirSync(folder)).toEqual([])
  })

  test('removes what a program that was killed left half written, and nothing of one that lives or runs elsewhere', async () => {
    const { folder, write } = bench()
    const draft = (host: string, pid: number) => join(folder, `.putback-${slugOf(host)}-${pid}-1.tmp`)
    const dead = draft(hostname(), 999_999_999)
    const living = [draft(hostname(), process.ppid), draft('another bench', 999_999_999)]
    for (const path of [dead, ...living]) writeFileSync(path, 'half')
    await write()
    expect([dead, ...living].map((path) => existsSync(path))).toEqual([false, true, true])
  })
})

describe('a restored job', () => {
  test('is the job that was put in, byte by byte, for this user only', async () => {
    const { job, write } = bench()
    writeFileSync(join(job, 'journal.torn-1'), 'half a li')
    const { path } = await write()
    const home = join(temporaryFolder(), 'new', 'home')
    const made = await restored(path, home)
    expect(made).toEqual({
      kind: 'restored',
      folder: 'blue-twin',
      path: join(home, 'blue-twin'),
      job: { no: 7, name: 'blue twin', id: 'e1', entries: 2, hurt: null },
    })
    expect(contents(join(home, 'blue-twin'))).toEqual(contents(job))
    expect(readdirSync(home)).toEqual(['blue-twin'])
    if (process.platform === 'win32') return
    const modes = ['.', 'photos', 'journal.log', 'photos/20300101-081600.png'].map(
      (name) => statSync(join(home, 'blue-twin', name)).mode & 0o777,
    )
    expect(modes).toEqual([0o700, 0o700, 0o600, 0o600])
  })

  test('is never put over the same job, or beside one with its number', async () => {
    const { home, job, write } = bench()
    const { path } = await write()
    const before = contents(home)
    expect(await restored(path, home)).toEqual({
      kind: 'in-the-way',
      by: { why: 'same-job', path: job, no: 7, name: 'blue twin' },
    })
    writeFileSync(join(job, 'journal.log'), '')
    const other = keepJob(home, { folder: 'grey-triple', pictures: {} })
    // Of another job: its first entry has another id.
    const text = journalOf({}).split('\n')[0] ?? ''
    writeFileSync(join(other, 'journal.log'), relined(text.replace('"id":"e1"', '"id":"x1"')))
    expect(await restored(path, home)).toMatchObject({
      kind: 'in-the-way',
      by: { why: 'same-number', path: other },
    })
    rmSync(other, { recursive: true })
    writeFileSync(join(job, 'journal.log'), journalOf())
    expect(contents(home)).toEqual(before)
  })

  test('gets a folder of its own where its name is taken', async () => {
    const { home, job, write } = bench()
    const { path } = await write()
    writeFileSync(join(job, 'journal.log'), 'no longer legible\n')
    writeFileSync(join(home, 'blue-twin-2'), 'a file')
    expect(await restored(path, home)).toMatchObject({ folder: 'blue-twin-3' })
    expect(readFileSync(join(job, 'journal.log'), 'utf8')).toBe('no longer legible\n')
  })

  test('of a folder with any name lies inside the home', async () => {
    const outer = temporaryFolder()
    const job = keepJob(outer, { folder: 'a job \u202e.. $(x) Ü' })
    const { path } = await writeArchive(job, { folder: outer }, OPTIONS)
    const home = join(outer, 'home')
    expect(await restored(path, home)).toMatchObject({ folder: 'a-job-x-u' })
    expect(readdirSync(home)).toEqual(['a-job-x-u'])
  })
})

test('the journal and single pictures can be had without restoring', async () => {
  const { job, folder, write } = bench()
  const archive = await openArchive((await write()).path)
  expect(await archive.journal()).toEqual(readFileSync(join(job, 'journal.log')))
  expect([...archive.pictures].sort()).toEqual(Object.keys(PICTURES).sort())
  const to = join(folder, 'copy.png')
  await archive.copyPictureOut('20300101-081600.png', to)
  expect(readFileSync(to)).toEqual(PICTURES['20300101-081600.png'])
  await expect(archive.copyPictureOut('20300101-081600.png', to)).rejects.toMatchObject({ code: 'EEXIST' })
  await expect(archive.copyPictureOut('../journal.log', join(folder, 'x'))).rejects.toMatchObject({
    code: 'missing',
  })
  expect(existsSync(join(folder, 'x'))).toBe(false)
  archive.close()
})

/** A line with the checksum of its own: what stands there was written so. */
function relined(line: string): string {
  return writeLine('00000000', JSON.parse(line.slice(9))).text
}
