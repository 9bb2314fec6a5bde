import { mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseEntry } from '../../../src/journal/entry.ts'
import { Session } from '../../../src/session/session.ts'
import { errnoOf } from '../../../src/storage/files/file-system.ts'
import { openJournal } from '../../../src/storage/journal/open-journal.ts'
import { type ChildProgram, type Running, startProgram } from '../../helpers/child-program.ts'
import { type Chance, chanceOf } from '../../support/damage/chance.ts'
import { openJob } from '../../support/record.ts'
import type { FileSystemCall } from './faulty-file-system.ts'
import { commandByChance } from './work-by-chance.ts'

/** What came of killing programs that write. */
export interface Kills {
  kills: number
  /** Entries that a program said were recorded. */
  acknowledged: number
  /** Of these, those that are not in the journal afterwards. */
  lost: string[]
  /** Journals with a line that is not right, or against the laws, or with one entry twice. */
  broken: string[]
  /** Recorded, and the program killed before it could say so: never more than one for each kill. */
  untold: number
  /** Last lines by half, each set aside by whoever opened the job next. */
  torn: number
  /** Killed while it had the lock; of these, before its name stood in it. */
  locked: number
  unnamed: number
  /** Locks of dead programs that nobody was in the way of, so nobody took them over. */
  lying: number
}

/** Killed from outside, at any moment, or in a call to the file system: `fdatasyncSync journal.log`. */
type Death = 'at random' | `${FileSystemCall} ${string}`

/**
 * Kills one program after the other that works in a job: a new job for each list of deaths, so many lists at once. Every
 * third job in which they are killed at random has two programs in it, of which one goes on while the other is killed. After each kill the next program, or
 * the other one, goes on by itself.
 */
export async function killWorkers(
  program: ChildProgram,
  jobs: readonly (readonly Death[])[],
  { seed, atOnce }: { seed: number; atOnce: number },
): Promise<Kills> {
  const seen: Kills = {
    kills: 0,
    acknowledged: 0,
    lost: [],
    broken: [],
    untold: 0,
    torn: 0,
    locked: 0,
    unnamed: 0,
    lying: 0,
  }
  const waiting = [...jobs.entries()]
  const lane = async () => {
    for (let job = waiting.shift(); job; job = waiting.shift()) {
      const [number, deaths] = job
      await oneJob(
        { program, chance: chanceOf(seed + number), seen, name: `job ${number}` },
        deaths,
        number % 3 === 2 && deaths.every((death) => death === 'at random'),
      )
    }
  }
  await Promise.all(Array.from({ length: atOnce }, lane))
  return seen
}

/** So many jobs with so many deaths each. */
export function randomDeaths(jobs: number, each: number): Death[][] {
  return Array.from({ length: jobs }, () => Array.from({ length: each }, () => 'at random' as const))
}

interface Killing {
  program: ChildProgram
  chance: Chance
  seen: Kills
  name: string
}

async function oneJob(killing: Killing, deaths: readonly Death[], hasTwo: boolean): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'putback-kills-'))
  try {
    const told = begun(folder, killing.chance)
    for (let at = 0; at < deaths.length; at += hasTwo ? 2 : 1) {
      const running = deaths.slice(at, at + (hasTwo ? 2 : 1)).map((death) => start(killing, folder, death))
      for (const { worker, death } of running) {
        await killOne(killing, worker, death)
        killing.seen.kills += 1
        lookAtLock(killing.seen, folder)
      }
      told.push(...running.flatMap(({ worker }) => worker.lines().filter(isEntryId)))
      lookAtJournal(killing, folder, told)
    }
    killing.seen.acknowledged += told.length
    endOf(killing, folder, told, deaths.length)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** A job with something in it; answers the ids of its entries. */
function begun(folder: string, chance: Chance): string[] {
  const session = new Session(openJournal(folder, { parse: parseEntry }))
  session.send(openJob)
  for (let turn = 0; turn < 5; turn += 1) session.send(commandByChance(session.state, chance))
  return session.entries().map(({ id }) => id)
}

function start(
  { program, chance }: Killing,
  folder: string,
  death: Death,
): { worker: Running; death: Death } {
  const seed = chance.whole(0, 1e9)
  const worker = startProgram(program, folder, seed, death === 'at random' ? '' : death)
  return { worker, death }
}

/** It is at work when it has said something; from then on any moment is as good as any other. */
async function killOne({ chance }: Killing, worker: Running, death: Death): Promise<void> {
  if (death === 'at random') {
    await worker.said(chance.whole(1, 4))
    await new Promise((resolve) => setTimeout(resolve, chance.between(0, 3)))
    worker.kill()
  }
  const { signal, stderr } = await worker.ended
  if (signal !== 'SIGKILL') throw new Error(`a worker ended by itself: ${stderr}`)
}

function isEntryId(line: string): boolean {
  return !line.includes(' ')
}

function lookAtLock(seen: Kills, folder: string): void {
  for (const lock of readdirSync(folder).filter((name) => name.startsWith('journal.lock'))) {
    const path = join(folder, lock)
    const text = readIfThere(path)
    if (text === null) continue
    seen.locked += 1
    if (text.endsWith('}\n')) continue
    seen.unnamed += 1
    // It counts as abandoned when it is ten seconds old. Nobody waits for that here.
    ageIfThere(path)
  }
}

function readIfThere(path: string): string | null {
  try {
    return readFileSync(path, 'utf8')
  } catch {
    return null
  }
}

/** The other program may remove it at any moment: to look first whether it is there would not do. */
function ageIfThere(path: string): void {
  try {
    utimesSync(path, 1, 1)
  } catch (error) {
    if (errnoOf(error) !== 'ENOENT') throw error
  }
}

/** As it lies there right after the kill, with nothing mended. */
function lookAtJournal({ seen, name }: Killing, folder: string, told: readonly string[]): void {
  const { entries, problem, unlawful } = read(folder)
  if (problem?.kind === 'torn') seen.torn += 1
  else if (problem)
    seen.broken.push(`${name}: ${problem.kind} in line ${'line' in problem ? problem.line : '?'}`)
  if (unlawful) seen.broken.push(`${name}: ${unlawful.message}`)
  const there = new Set(entries.map(({ id }) => id))
  if (there.size !== entries.length) seen.broken.push(`${name}: an entry twice`)
  seen.lost.push(...told.filter((id) => !there.has(id)))
}

/** Opened as the next user opens it: it goes on, and nothing lies about but what was set aside. */
function endOf({ seen, name }: Killing, folder: string, told: readonly string[], kills: number): void {
  const session = new Session(openJournal(folder, { parse: parseEntry, lockLimit: 20_000 }))
  const outcome = session.send({ do: 'note', kind: 'note', text: 'and on' })
  if (outcome.kind !== 'recorded') seen.broken.push(`${name}: does not go on: ${JSON.stringify(outcome)}`)
  // The last note was said by nobody.
  const untold = session.entries().length - told.length - 1
  if (untold > kills) seen.broken.push(`${name}: ${untold} entries more than were said`)
  seen.untold += untold
  // What is beside the lock is taken over when somebody comes to need it.
  const others = readdirSync(folder).filter((file) => !/^journal\.(log|torn-\d+)$/.test(file))
  const strays = others.filter((file) => !/^journal\.lock(\.takeover)+$/.test(file))
  seen.lying += others.length - strays.length
  if (strays.length > 0) seen.broken.push(`${name}: left behind: ${strays.join(', ')}`)
}

function read(folder: string) {
  const store = openJournal(folder, { parse: parseEntry, readOnly: true })
  return { entries: store.entries(), problem: store.problem, unlawful: new Session(store).unlawful }
}

/** The lock of a dead program lies there, and its last line has no end. */
const BEFORE: Death = 'writeSync journal.log'

/** Every call of recording, of taking over a dead program's lock, and of setting aside a torn end. */
export const DEATHS_IN_CALLS: readonly (readonly Death[])[] = [
  ...[
    ...calls('journal.lock', ['openSync', 'writeSync', 'fstatSync', 'closeSync', 'readSync', 'unlinkSync']),
    ...calls('journal.log', ['openSync', 'fstatSync', 'readSync', 'closeSync', 'writeSync', 'fdatasyncSync']),
    ...calls('journal.log in place', ['writeSync']),
  ].map((death) => [death]),
  ...[
    ...calls('journal.lock.takeover', ['openSync', 'writeSync', 'fstatSync', 'closeSync', 'unlinkSync']),
    ...calls('journal.torn-1', ['openSync', 'writeSync', 'fsyncSync', 'closeSync']),
    ...calls('journal.log', ['ftruncateSync', 'fsyncSync']),
  ].map((death) => [BEFORE, death]),
]

function calls(file: string, names: readonly FileSystemCall[]): Death[] {
  return names.map((name): Death => `${name} ${file}`)
}
