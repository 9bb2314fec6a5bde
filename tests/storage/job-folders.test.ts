import {
  appendFileSync,
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { createJob, hasJournal, listJobs } from '../../src/storage/job-folders.ts'
import { openJournal } from '../../src/storage/journal/open-journal.ts'
import { faultyFileSystem } from './support/faulty-file-system.ts'
import { note, notes, parseNote } from './support/notes.ts'
import { temporaryFolder } from './support/temporary-folder.ts'

describe('a new job', () => {
  test('gets a folder with an empty journal, and the home if there is none yet', () => {
    const home = join(temporaryFolder(), 'not', 'yet')
    const job = createJob(home, 'The blue twin')
    expect(job).toEqual({ folder: 'the-blue-twin', path: join(home, 'the-blue-twin') })
    expect(readFileSync(join(job.path, 'journal.log'), 'utf8')).toBe('')
    openJournal(job.path, { parse: parseNote }).append(() => notes(2))
    expect(listJobs(home, parseNote)).toEqual([{ ...job, header: note(1), problem: null }])
  })

  test('never takes the place of one of the same name', () => {
    const home = temporaryFolder()
    mkdirSync(join(home, 'mower'))
    writeFileSync(join(home, 'mower', 'notes.txt'), 'mine')
    expect([1, 2, 3].map(() => createJob(home, 'Mower').folder)).toEqual(['mower-2', 'mower-3', 'mower-4'])
    expect(readdirSync(join(home, 'mower'))).toEqual(['notes.txt'])
    writeFileSync(join(home, 'saw'), 'a file')
    expect(createJob(home, 'saw').folder).toBe('saw-2')
  })

  test.skipIf(process.platform === 'win32')('is for its user only', () => {
    const { path } = createJob(temporaryFolder(), 'mower')
    expect(statSync(path).mode & 0o777).toBe(0o700)
    expect(statSync(join(path, 'journal.log')).mode & 0o777).toBe(0o600)
  })

  test('is not made when the disk does not take it', () => {
    const home = temporaryFolder()
    const fs = faultyFileSystem()
    fs.plantIn('fsyncSync', 'EIO')
    expect(() => createJob(home, 'mower', fs)).toThrow(expect.objectContaining({ code: 'EIO' }))
    expect(readdirSync(home)).toEqual([])
    expect(createJob(home, 'mower', fs).folder).toBe('mower')
  })
})

describe('the list', () => {
  test('of a home that is not there is empty; of a file is an error', () => {
    const folder = temporaryFolder()
    expect(listJobs(join(folder, 'none'), parseNote)).toEqual([])
    writeFileSync(join(folder, 'file'), '')
    expect(() => listJobs(join(folder, 'file'), parseNote)).toThrow(
      expect.objectContaining({ code: 'ENOTDIR' }),
    )
  })

  test('is by name, without what is no job', () => {
    const home = temporaryFolder()
    for (const name of ['saw', 'boat', 'mower']) jobIn(home, name)
    mkdirSync(join(home, 'empty'))
    mkdirSync(join(home, 'odd', 'journal.log'), { recursive: true })
    writeFileSync(join(home, 'journal.log'), '')
    writeFileSync(join(home, '.chosen'), 'saw\n')
    const jobs = listJobs(home, parseNote)
    expect(jobs.map(({ folder }) => folder)).toEqual(['boat', 'mower', 'saw'])
    expect(jobs[0]).toEqual({
      folder: 'boat',
      path: join(home, 'boat'),
      header: note(1, 'boat'),
      problem: null,
    })
  })

  test.skipIf(process.platform === 'win32' || process.getuid?.() === 0)(
    'shows a folder that may not be looked into, rather than no job at all',
    () => {
      const home = temporaryFolder()
      jobIn(home, 'locked away')
      chmodSync(join(home, 'locked away'), 0o000)
      try {
        expect(listJobs(home, parseNote)).toMatchObject([
          { folder: 'locked away', header: null, problem: { kind: 'unreadable', code: 'EACCES' } },
        ])
      } finally {
        chmodSync(join(home, 'locked away'), 0o700)
      }
    },
  )

  test('a folder that the system cannot look into counts as a job; one that is not there does not', () => {
    const home = temporaryFolder()
    symlinkSync('loop', join(home, 'loop'))
    writeFileSync(join(home, 'file'), '')
    expect(hasJournal(join(home, 'loop', 'job'))).toBe(process.platform !== 'win32')
    for (const name of ['nothing', 'file/job', 'x'.repeat(5000), 'a\0b'])
      expect(hasJournal(join(home, name)), name).toBe(false)
  })

  test('shows a job whose first line is not legible, with what is wrong', () => {
    const home = temporaryFolder()
    const files = ['damaged', 'torn', 'zeros', 'strange'].map((name) => jobIn(home, name))
    const [damaged = '', torn = '', zeros = '', strange = ''] = files
    writeFileSync(damaged, readFileSync(damaged, 'utf8').replace('damaged', 'mangled'))
    truncateSync(torn, statSync(torn).size - 1)
    writeFileSync(zeros, Buffer.alloc(3_000_000))
    writeFileSync(strange, 'a shopping list\n')
    createJob(home, 'unused')
    expect(listJobs(home, parseNote).map(({ folder, header, problem }) => [folder, header, problem])).toEqual(
      [
        ['damaged', null, expect.objectContaining({ kind: 'damaged', line: 1, why: 'checksum' })],
        ['strange', null, expect.objectContaining({ kind: 'damaged', line: 1, text: 'a shopping list' })],
        ['torn', null, expect.objectContaining({ kind: 'torn', line: 1 })],
        ['unused', null, { kind: 'empty' }],
        ['zeros', null, expect.objectContaining({ kind: 'torn', line: 1 })],
      ],
    )
  })

  test('reads the first line alone, however long it is', () => {
    const home = temporaryFolder()
    const path = jobIn(home, 'x'.repeat(20_000), 'mower')
    appendFileSync(path, 'what follows is not looked at\n')
    expect(listJobs(home, parseNote)).toMatchObject([{ header: note(1, 'x'.repeat(20_000)), problem: null }])
  })

  test.skipIf(process.platform === 'win32')('does not follow links', () => {
    const [home, elsewhere] = [temporaryFolder(), temporaryFolder()]
    jobIn(elsewhere, 'theirs')
    symlinkSync(join(elsewhere, 'theirs'), join(home, 'link'))
    mkdirSync(join(home, 'linked-journal'))
    symlinkSync(join(elsewhere, 'theirs', 'journal.log'), join(home, 'linked-journal', 'journal.log'))
    expect(listJobs(home, parseNote)).toEqual([])
    expect(createJob(home, 'link').folder).toBe('link-2')
    expect(existsSync(join(elsewhere, 'theirs', 'journal.log'))).toBe(true)
  })
})

/** A job with one entry; returns the path of its journal. */
function jobIn(home: string, text: string, name = text): string {
  const { path } = createJob(home, name)
  const store = openJournal(path, { parse: parseNote })
  store.append(() => [note(1, text)])
  return store.path
}
