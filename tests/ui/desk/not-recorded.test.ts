import { spawnSync } from 'node:child_process'
import { renameSync, rmSync, writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { DiskShelf } from '../../../src/cli/job-shelf.ts'
import { faultyFileSystem } from '../../storage/support/faulty-file-system.ts'
import { emptyHome, say, screens } from '../support/bench.ts'

/** A job on a disk that can be made to fail, open on the screens. */
function onDisk() {
  const home = emptyHome()
  const fs = faultyFileSystem()
  const shelf = new DiskShelf(home, { fs, lockLimit: 0, now: () => new Date(2030, 0, 15, 14, 5) })
  const path = shelf.create({ name: 'blue twin', machine: 'the blue twin', units: 'metric' })
  say(shelf.open(path), 'strip cover', 'off 6 cover bolts M6 into bag')
  const seen = screens(shelf)
  return { ...seen, fs, path, shelf }
}

type OnDisk = ReturnType<typeof onDisk>

const LINE = 'off 4 washers into bag'
const HOLDER = {
  pid: process.ppid,
  host: hostname(),
  since: '2030-01-15T13:58:20.000Z',
  thread: 0,
  token: 'theirs',
}

/** What goes wrong, how it is mended, and what is said. */
const FAULTS: [name: string, spoil: (bench: OnDisk) => void, mend: (bench: OnDisk) => void, says: string][] =
  [
    [
      'the disk is full',
      ({ fs }) => fs.plant({ at: 1, errno: 'ENOSPC', onwards: true }),
      ({ fs }) => fs.mend(),
      'Not recorded: the disk is full.',
    ],
    [
      'the disk has room for the lock only',
      ({ fs }) => fs.plantIn('fdatasyncSync', 'ENOSPC'),
      () => {},
      'Not recorded: the disk is full.',
    ],
    [
      'the disk can only be read',
      ({ fs }) => fs.plantIn('openSync', 'EROFS'),
      () => {},
      'Not recorded: the disk can only be read.',
    ],
    [
      'the disk is broken',
      ({ fs }) => fs.plantIn('fdatasyncSync', 'EIO'),
      () => {},
      'Not recorded: the disk reports an error.',
    ],
    [
      'the share does not answer',
      ({ fs }) => fs.plant({ at: 1, errno: 'ESTALE', onwards: true }),
      ({ fs }) => fs.mend(),
      'Not recorded: the network disk does not answer.',
    ],
    [
      'the folder is gone',
      ({ path }) => renameSync(path, `${path}-elsewhere`),
      ({ path }) => renameSync(`${path}-elsewhere`, path),
      'Not recorded: the folder or the disk is gone.',
    ],
    [
      'a program that lives has the job',
      ({ path }) => writeFileSync(join(path, 'journal.lock'), JSON.stringify(HOLDER)),
      ({ path }) => rmSync(join(path, 'journal.lock')),
      `Not recorded: process ${process.ppid} on ${hostname()} has the job since 2030-01-15 13:58 UTC.`,
    ],
    [
      'another computer has the job',
      ({ path }) => writeFileSync(join(path, 'journal.lock'), JSON.stringify({ ...HOLDER, host: 'bench-2' })),
      ({ path }) => rmSync(join(path, 'journal.lock')),
      `Not recorded: process ${process.ppid} on bench-2 has the job since 2030-01-15 13:58 UTC.`,
    ],
  ]

describe.each(FAULTS)('%s', (_, spoil, mend, says) => {
  test('is said, the line stays, and Enter sends it again', () => {
    const bench = onDisk()
    const { enter, below, answer, line, entries } = bench
    const before = entries()
    spoil(bench)
    enter(LINE)
    expect(below()).toContain('NOT RECORDED')
    expect(answer().replace(/\s+/g, ' ')).toContain(says)
    expect(line()).toBe(`${LINE}|`)
    expect(entries()).toBe(before)
    expect(bench.rings.at(-1)).toBe(3)
    mend(bench)
    enter('')
    expect(answer()).toContain('RECORDED  came off: 4 × washers')
    expect([line(), entries()]).toEqual(['|', before + 1])
    expect(bench.shelf.open(bench.path).entries()).toEqual(bench.desk.session?.entries())
  })

  test('is said of what has no words: taking back', () => {
    const bench = onDisk()
    spoil(bench)
    bench.enter('0')
    expect(bench.answer().replace(/\s+/g, ' ')).toContain(says)
    mend(bench)
    bench.enter('')
    expect(bench.state().ledger.accounts.size).toBe(0)
  })

  test('the note to whoever goes on stays in the line, and nobody leaves without it', () => {
    const bench = onDisk()
    const note = 'the pump is next, its gasket lies in the blue box'
    bench.enter('quit')
    spoil(bench)
    bench.enter(note)
    expect(bench.answer().replace(/\s+/g, ' ')).toContain(says)
    expect([bench.line(), bench.desk.ended]).toEqual([`${note}|`, null])
    mend(bench)
    bench.enter('')
    expect(bench.desk.ended).toBe(0)
    expect(bench.shelf.open(bench.path).entries().at(-1)).toMatchObject({ type: 'stopped', note })
  })

  test('lines that were pasted are all there still, but for those that were recorded', () => {
    const bench = onDisk()
    bench.type('\x1b[200~off 1 bracket; 2 clips\nnote: three\x1b[201~')
    const before = bench.entries()
    spoil(bench)
    bench.enter('')
    expect(bench.answer().replace(/\s+/g, ' ')).toContain(says)
    expect(bench.desk.screen).toEqual({ at: 'paste', lines: ['off 1 bracket; 2 clips', 'note: three'] })
    mend(bench)
    bench.enter('')
    const added = bench.desk.session?.entries().slice(before)
    expect(added?.map(({ type }) => type)).toEqual(['came-off', 'came-off', 'noted'])
  })
})

test('what is typed over words that are not recorded goes first, and they come back at their place', () => {
  const { enter, type, fs, line, answer, entries, desk } = onDisk()
  const before = entries()
  fs.plant({ at: 1, errno: 'ENOSPC', onwards: true })
  enter('.1', '4 washers')
  // Elsewhere they would mean something else, or be the answer to what is asked there.
  enter('.2')
  expect([line(), desk.screen.at]).toEqual(['|', 'lies'])
  enter('.1')
  expect(line()).toBe('4 washers|')
  enter('3 clips')
  expect(answer()).toContain('Not recorded: the disk is full.')
  fs.mend()
  enter('')
  expect([line(), entries()]).toEqual(['4 washers|', before + 1])
  expect(answer()).toContain('RECORDED  came off: 3 × clips')
  enter('')
  expect([line(), entries()]).toEqual(['|', before + 2])
  // Given up is given up.
  fs.plant({ at: 1, errno: 'ENOSPC', onwards: true })
  enter('5 springs')
  type('\x15')
  enter('.2', '.1')
  expect(line()).toBe('|')
})

test('a dead program had the job: nobody hears of it', () => {
  const { enter, path, answer } = onDisk()
  const { pid } = spawnSync(process.execPath, ['-e', '0'])
  writeFileSync(join(path, 'journal.lock'), `${JSON.stringify({ ...HOLDER, pid })}\n`)
  enter(LINE)
  expect(answer()).toMatch(/RECORDED {2}came off: 4 × washers/)
  expect(answer()).not.toContain('process')
})

test('a line of which the first half was recorded: the other half stays', () => {
  const { enter, fs, line, answer, entries } = onDisk()
  const before = entries()
  const flush = { left: 1 }
  const { fdatasyncSync } = fs
  fs.fdatasyncSync = (fd) => {
    if (flush.left === 0) throw Object.assign(new Error('EIO'), { code: 'EIO' })
    flush.left -= 1
    fdatasyncSync(fd)
  }
  enter('off 1 bracket; 2 clips')
  expect(answer()).toContain('Not recorded: the disk reports an error.')
  expect([line(), entries()]).toEqual(['2 clips|', before + 1])
})

test('a job that could not be begun: its name and machine are typed once', () => {
  const { enter, fs, line, answer, desk, shelf } = onDisk()
  enter('jobs', 'new job the other twin')
  fs.plant({ at: 1, errno: 'ENOSPC', onwards: true })
  enter('an engine on a stand')
  expect(answer()).toContain('Not recorded: the disk is full.')
  expect([line(), desk.screen]).toEqual(['an engine on a stand|', { at: 'new-job', name: 'the other twin' }])
  fs.mend()
  enter('')
  expect(shelf.list().map(({ name, machine }) => [name, machine])).toEqual([
    ['blue twin', 'the blue twin'],
    ['the other twin', 'an engine on a stand'],
  ])
})

test.each([
  ['where there is no room at all', 1],
  ['where the room ends in the middle of it', 400],
])('a demo job %s is said, and can be asked for again', (_, at) => {
  const fs = faultyFileSystem()
  const shelf = new DiskShelf(emptyHome(), { fs, lockLimit: 0 })
  const { enter, answer, desk } = screens(shelf)
  fs.plant({ at, errno: 'ENOSPC', onwards: true })
  enter('2')
  expect(answer()).toMatch(/NOT RECORDED .*the disk is full\./)
  expect(desk.session).toBeNull()
  fs.mend()
  enter('jobs', String(shelf.list().length + 2))
  expect(answer()).not.toContain('NOT RECORDED')
  expect(desk.session?.state.job.name).toBe('The blue twin')
})
