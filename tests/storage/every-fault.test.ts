import { spawnSync } from 'node:child_process'
import { appendFileSync, existsSync, readdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { expect, test, vi } from 'vitest'
import { DiskShelf } from '../../src/cli/job-shelf.ts'
import type { Session } from '../../src/session/session.ts'
import { troubleText } from '../../src/words/storage-troubles.ts'
import { troubleOfError } from '../../src/words/trouble-of.ts'
import { off, strip } from '../support/commands.ts'
import { type Fault, type FaultyFileSystem, faultyFileSystem } from './support/faulty-file-system.ts'
import { temporaryFolder } from './support/temporary-folder.ts'

/** A job with three entries in a home of its own, on a disk that can be made to fail. */
interface Bench {
  home: string
  fs: FaultyFileSystem
  shelf: DiskShelf
  path: string
  /** Opened before the fault. */
  session: Session
}

interface Operation {
  /** What is there before the fault. */
  before?: (bench: Bench) => void
  /** Throws, or answers what came of it. */
  work: (bench: Bench) => void
  /** Whether it was done. */
  isDone: (bench: Bench) => boolean
}

const OPERATIONS: Record<string, Operation> = {
  'make a job in a new home': {
    work: ({ fs, home }) => new DiskShelf(join(home, 'new', 'home'), { fs, lockLimit: 0 }).create(OTHER),
    isDone: ({ home }) => jobs(join(home, 'new', 'home')).includes(OTHER.name),
  },
  'make a job beside another': {
    work: ({ shelf }) => shelf.create(OTHER),
    isDone: ({ home }) => jobs(home).includes(OTHER.name),
  },
  'open a job': {
    work: ({ shelf, path }) => expect(shelf.open(path).entries()).toHaveLength(3),
    isDone: () => true,
  },
  record: {
    work: ({ session }) => send(session, 'bag 4'),
    isDone: (bench) => storedLasts(bench, 'bag 4'),
  },
  'record after a record that failed': {
    before: ({ fs, session }) => {
      fs.plantIn('fdatasyncSync', 'EIO')
      expect(session.send(strip('failed')).kind).toBe('not-recorded')
      fs.mend()
    },
    work: ({ session }) => send(session, 'bag 4'),
    isDone: (bench) => storedLasts(bench, 'bag 4'),
  },
  'record behind a torn end': {
    before: ({ session }) => appendFileSync(session.store.path, TORN),
    work: ({ session }) => send(session, 'bag 4'),
    isDone: (bench) => storedLasts(bench, 'bag 4'),
  },
  'record where a dead program left its lock': {
    before: ({ path }) => writeFileSync(join(path, 'journal.lock'), `${JSON.stringify(dead)}\n`),
    work: ({ session }) => send(session, 'bag 4'),
    isDone: (bench) => storedLasts(bench, 'bag 4'),
  },
  'read what another wrote': {
    before: ({ path }) => send(new DiskShelf(join(path, '..')).open(path), 'theirs'),
    work: ({ session }) => expect(session.refresh()).toBe(true),
    isDone: ({ session }) => session.entries().length === 4,
  },
  'open a job with a torn end': {
    before: ({ session }) => appendFileSync(session.store.path, TORN),
    work: ({ shelf, path }) => expect(shelf.open(path).entries()).toHaveLength(3),
    isDone: () => true,
  },
  'choose a job': {
    before: ({ home }) => new DiskShelf(home).create(OTHER),
    work: ({ shelf, path }) => shelf.choose(path),
    isDone: ({ home, path }) => new DiskShelf(home).chosen() === path,
  },
  'turn the sound off': {
    work: ({ shelf }) => shelf.setSound(false),
    isDone: ({ home }) => !new DiskShelf(home).hasSound(),
  },
}

const OTHER = { name: 'the other twin', machine: '', units: 'metric' } as const
/** As the holder of a lock. */
const dead = {
  pid: spawnSync(process.execPath, ['-e', '0']).pid,
  host: hostname(),
  since: '2026-11-30T08:00:00.000Z',
  thread: 0,
  token: 'dead',
}

const TORN = 'deadbeef {"v":1'

/** Each with every call failing in turn: once, or from then on; and each write taking half of its bytes. */
const ERRORS: readonly Omit<Fault, 'at'>[] = [
  { errno: 'EIO' },
  { errno: 'ENOSPC', onwards: true },
  { errno: 'short', only: 'writeSync' },
]

test.each(Object.entries(OPERATIONS))(
  '%s, any call fails: nothing recorded is lost, what failed is said, and it goes on',
  (_, operation) => {
    // Nobody else is there to be waited for.
    vi.spyOn(Atomics, 'wait').mockReturnValue('timed-out')
    let faults = 0
    for (const fault of ERRORS) {
      for (let at = 1; ; at += 1) {
        const hit = withFault(operation, { ...fault, at })
        if (hit === null) break
        faults += 1
      }
    }
    expect(faults).toBeGreaterThan(6)
  },
)

/** Plants a fault and carries out the operation; answers which call the fault hit, or null when there are not so many. */
function withFault(operation: Operation, fault: Fault): string | null {
  const bench = jobOnDisk()
  const { fs, home, path, session } = bench
  const recorded = readFileSync(session.store.path)
  operation.before?.(bench)
  const isTorn = readFileSync(session.store.path, 'utf8').endsWith(TORN)
  fs.plant(fault)
  const error = errorOf(() => operation.work(bench))
  const { hit } = fs
  fs.mend()
  const where = `${hit} at call ${fault.at}: ${fault.errno}${fault.onwards ? ' from then on' : ''}`
  age(join(home, '.jobs.lock'))
  age(join(path, 'journal.lock'))
  age(join(path, 'journal.lock.takeover'))

  expect(readFileSync(session.store.path).subarray(0, recorded.length), where).toEqual(recorded)
  if (isTorn) expect(tornEnds(bench), where).toContain(TORN)
  if (error === null) expect(operation.isDone(bench), where).toBe(true)
  else {
    const trouble = troubleOfError(error, path)
    if (trouble === null) throw error
    expect(troubleText(trouble).what, where).toMatch(/^(Not recorded: |The file )/)
    const isTakenBack = trouble.kind === 'not-recorded' && trouble.takenBack
    if (isTakenBack) expect(operation.isDone(bench), where).toBe(false)
  }

  // With the fault gone, whoever had the job open goes on, and so does whoever opens it now.
  send(session, 'and on')
  send(new DiskShelf(home, { fs }).open(path), 'and on')
  const inTrouble = new DiskShelf(home).list().filter(({ problem }) => problem !== null)
  // What a disk that stays gone would not let be removed is left.
  if (!fault.onwards) expect(inTrouble, where).toEqual([])
  return hit
}

function jobOnDisk(): Bench {
  const home = temporaryFolder()
  const fs = faultyFileSystem()
  const shelf = new DiskShelf(home, { fs, lockLimit: 0 })
  const path = shelf.create({ name: 'blue twin', machine: 'the blue twin', units: 'metric' })
  const session = shelf.open(path)
  for (const command of [strip('cover off'), off(6, 'cover bolts')]) {
    if (session.send(command).kind !== 'recorded') throw new Error('not begun')
  }
  return { home, fs, shelf, path, session }
}

function send(session: Session, title: string): void {
  const outcome = session.send(strip(title))
  if (outcome.kind === 'not-recorded') throw outcome.error
  expect(outcome.kind).toBe('recorded')
}

function storedLasts({ home, path }: Bench, title: string): boolean {
  const last = new DiskShelf(home).open(path).entries().at(-1)
  return last?.type === 'strip-began' && last.step.title === title
}

/** The names of the jobs of a home that were begun. */
function jobs(home: string): string[] {
  return new DiskShelf(home).list().flatMap(({ no, name }) => (no === null ? [] : [name]))
}

/** What of a line without an end is there, in the journal or beside it. */
function tornEnds({ path, session }: Bench): string[] {
  const aside = readdirSync(path).filter((name) => name.startsWith('journal.torn-'))
  const last = readFileSync(session.store.path, 'utf8').split('\n').at(-1) ?? ''
  return [last, ...aside.map((name) => readFileSync(join(path, name), 'utf8'))]
}

/** A lock that could neither be named nor removed counts as abandoned after 10 s. */
function age(lock: string): void {
  if (existsSync(lock) && !readFileSync(lock, 'utf8').endsWith('}\n')) utimesSync(lock, 1, 1)
}

function errorOf(work: () => void): unknown {
  try {
    work()
    return null
  } catch (error) {
    return error
  }
}
