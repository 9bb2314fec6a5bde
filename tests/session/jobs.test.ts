import { appendFileSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { DiskShelf } from '../../src/cli/job-shelf.ts'
import type { Command } from '../../src/journal/command.ts'
import { ENTRY_VERSION, type EntryBody } from '../../src/journal/entry.ts'
import { type JobSummary, NumbersUsedUp } from '../../src/session/jobs.ts'
import { writeLine } from '../../src/storage/journal/line.ts'
import { temporaryFolder } from '../storage/support/temporary-folder.ts'
import { begin, clear, done, endStrip, firstStart, off, putOn, strip } from '../support/commands.ts'
import { goOnAsNewer } from '../support/newer.ts'
import { numbered } from '../support/record.ts'
import { tell, writeUnasked } from './support/sessions.ts'

const twin = { name: 'blue twin', machine: 'parallel twin', units: 'metric' } as const

describe('a new job', () => {
  test('gets the lowest free number, is there to be opened, and is chosen', () => {
    const shelf = shelfIn()
    const [first, second, third] = [shelf.create(twin), shelf.create(twin), shelf.create(twin)]
    expect(shelf.list().map(({ no, folder }) => [no, folder])).toEqual([
      [1, 'blue-twin'],
      [2, 'blue-twin-2'],
      [3, 'blue-twin-3'],
    ])
    expect(shelf.chosen()).toBe(third)
    shelf.choose(first)
    expect(shelf.chosen()).toBe(first)
    rmSync(second, { recursive: true })
    expect(shelf.open(shelf.create({ ...twin, name: 'mower', units: 'us' })).state.job).toEqual({
      no: 2,
      name: 'mower',
      machine: 'parallel twin',
      units: 'us',
      archived: false,
    })
  })

  test('is refused when no number is free; then nothing is left behind', () => {
    const shelf = shelfIn()
    for (let no = 1; no <= 998; no += 1) writeJob(shelf, no)
    expect(shelf.open(shelf.create(twin)).state.job.no).toBe(999)
    const before = readdirSync(shelf.home).sort()
    expect(() => shelf.create(twin)).toThrow(NumbersUsedUp)
    expect(readdirSync(shelf.home).sort()).toEqual(before)
    rmSync(join(shelf.home, 'job-500'), { recursive: true })
    expect(shelf.open(shelf.create(twin)).state.job.no).toBe(500)
  })

  function writeJob({ home }: DiskShelf, no: number): void {
    mkdirSync(join(home, `job-${no}`))
    const entry = numbered({ type: 'opened', job: { ...twin, no } }, 1)
    writeFileSync(join(home, `job-${no}`, 'journal.log'), writeLine('00000000', entry).text)
  }
})

describe('a job in the list', () => {
  const stripped = [strip('bracket off'), off(6, 'bolt'), endStrip]
  const built = [...stripped, begin(1), putOn('p1'), done(1)]

  test.each<[string, Command[], Partial<JobSummary>]>([
    ['new', [], { phase: 'strip-down' }],
    ['all off', stripped, { phase: 'waiting' }],
    ['going back', [...stripped, begin(1)], { phase: 'build-up' }],
    ['cleared', [...built, clear], { phase: 'ready for first start' }],
    ['running', [...built, clear, firstStart], { phase: 'running in' }],
    ['closed', [...built, clear, firstStart, { do: 'close-job' }], { phase: 'closed' }],
    ['put away', [{ do: 'archive', archived: true }], { phase: 'strip-down', archived: true }],
    [
      'renamed',
      [{ do: 'describe', name: 'the twin', machine: 'top end' }],
      { phase: 'strip-down', name: 'the twin', machine: 'top end' },
    ],
  ])('%s', (_, commands, more) => {
    const shelf = shelfIn()
    const path = shelf.create(twin)
    tell(shelf.open(path), ...commands)
    expect(shelf.list()).toEqual([
      {
        folder: 'blue-twin',
        path,
        id: shelf.open(path).entries()[0]?.id,
        no: 1,
        name: 'blue twin',
        machine: 'parallel twin',
        archived: false,
        problem: null,
        ...more,
      },
    ])
  })

  const unlawful: EntryBody = { type: 'strip-ended', step: 9 }
  test.each<[string, (path: string) => void, Partial<JobSummary>]>([
    [
      'an entry that breaks a law',
      (path) => writeUnasked(path, [numbered(unlawful, 5)]),
      { no: 1, phase: 'waiting', problem: { kind: 'law', entry: 5 } },
    ],
    [
      'a line that was changed',
      (path) => edit(path, (text) => text.replace('"count":6', '"count":7')),
      { no: 1, phase: 'strip-down', problem: expect.objectContaining({ kind: 'damaged', line: 3 }) },
    ],
    [
      'an entry of a newer program',
      (path) => goOnAsNewer(path),
      { no: 1, phase: 'waiting', problem: expect.objectContaining({ kind: 'newer', line: 5 }) },
    ],
    [
      'an entry of this version in no shape that it has',
      (path) => goOnAsNewer(path, ENTRY_VERSION),
      {
        no: 1,
        phase: 'waiting',
        problem: expect.objectContaining({ kind: 'damaged', line: 5, why: 'shape' }),
      },
    ],
    [
      'an entry that breaks a law, and one of a newer program behind it',
      (path) => {
        writeUnasked(path, [numbered(unlawful, 5)])
        goOnAsNewer(path)
      },
      { no: 1, phase: 'waiting', problem: { kind: 'law', entry: 5 } },
    ],
    [
      'a first entry of a newer program',
      (path) => {
        edit(path, () => '')
        goOnAsNewer(path)
      },
      {
        no: null,
        name: 'blue-twin',
        phase: null,
        problem: expect.objectContaining({ kind: 'newer', line: 1, version: ENTRY_VERSION + 1 }),
      },
    ],
    [
      'a torn end',
      (path) => appendFileSync(join(path, 'journal.log'), 'abc'),
      { no: 1, phase: 'waiting', problem: expect.objectContaining({ kind: 'torn' }) },
    ],
    [
      'a first line that was changed',
      (path) => edit(path, (text) => text.replace('blue', 'grey')),
      {
        no: null,
        name: 'blue-twin',
        phase: null,
        problem: expect.objectContaining({ kind: 'damaged', line: 1 }),
      },
    ],
    [
      'an empty journal',
      (path) => edit(path, () => ''),
      { no: null, name: 'blue-twin', phase: null, problem: { kind: 'empty' } },
    ],
  ])('with %s: what is good of it is told', (_, spoil, summary) => {
    const shelf = shelfIn()
    const path = shelf.create(twin)
    tell(shelf.open(path), ...stripped)
    spoil(path)
    const before = readFileSync(join(path, 'journal.log'), 'utf8')
    expect(shelf.list()).toEqual([expect.objectContaining({ folder: 'blue-twin', path, ...summary })])
    // A list only looks.
    expect(readFileSync(join(path, 'journal.log'), 'utf8')).toBe(before)
  })

  function edit(path: string, change: (text: string) => string): void {
    const file = join(path, 'journal.log')
    writeFileSync(file, change(readFileSync(file, 'utf8')))
  }
})

test('a folder outside the home is not chosen', () => {
  const shelf = shelfIn()
  const path = shelf.create(twin)
  expect(() => shelf.choose(join(path, 'photos'))).toThrow(RangeError)
  expect(shelf.chosen()).toBe(path)
})

test('who enters a job is alone in it', () => {
  const shelf = shelfIn()
  const presence = shelf.enter(shelf.create(twin))
  expect(presence.othersHere()).toBe(false)
  presence.leave()
})

function shelfIn(): DiskShelf {
  return new DiskShelf(temporaryFolder())
}
