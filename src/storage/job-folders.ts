import { lstatSync, readdirSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import {
  errnoOf,
  type FileSystem,
  nodeFileSystem,
  readBytes,
  syncFolder,
  withFile,
} from './files/file-system.ts'
import { numberedSlug, slugOf } from './job-slug.ts'
import { JOURNAL_NAME } from './journal/journal-file.ts'
import { type LineProblem, MAX_LINE_BYTES, type Numbered, readLines } from './journal/line.ts'

/** The name of the lock in a home, which whoever gives a job its number holds. */
export const JOBS_LOCK_NAME = '.jobs.lock'

/** One job as the list shows it. `header` is its first entry; what follows was not read. */
export interface JobFolder<E> {
  folder: string
  path: string
  header: E | null
  problem: HeaderProblem | null
}

/** Empty: made, but its first entry was never written. Unreadable: with the system's error code. */
export type HeaderProblem = LineProblem | { kind: 'empty' } | { kind: 'unreadable'; code: string }

/**
 * The jobs in a home, by name: each folder that has a journal of its own. Links are not followed. A missing home has
 * none; throws the system's error when it is there but cannot be read.
 */
export function listJobs<E extends Numbered>(home: string, parse: (raw: unknown) => E): JobFolder<E>[] {
  return foldersIn(home)
    .sort()
    .map((folder) => ({ folder, path: join(home, folder) }))
    .filter(({ path }) => hasJournal(path))
    .map((job) => ({ ...job, ...readHeader(join(job.path, JOURNAL_NAME), parse) }))
}

/** Makes the folder that jobs lie in, with those above it, each name flushed. Throws the system's error. */
export function makeHome(home: string, fs: FileSystem = nodeFileSystem): void {
  const first = fs.mkdirSync(home, { recursive: true, mode: 0o700 })
  if (first === undefined) return
  const above = dirname(resolve(first))
  for (let made = resolve(home); made !== above; made = dirname(made)) syncFolder(fs, dirname(made))
}

/**
 * Makes a folder with an empty journal for a new job, for this user only. The folder's name comes from the job's,
 * with -2, -3 behind it when there is one already. Throws the system's error.
 */
export function createJob(
  home: string,
  name: string,
  fs: FileSystem = nodeFileSystem,
): { folder: string; path: string } {
  makeHome(home, fs)
  const folder = makeFolder(home, slugOf(name), fs)
  const path = join(home, folder)
  const journal = join(path, JOURNAL_NAME)
  try {
    withFile(fs, journal, 'wx', (fd) => fs.fsyncSync(fd))
    for (const changed of [path, home]) syncFolder(fs, changed)
  } catch (error) {
    discardJob(path, fs)
    throw error
  }
  return { folder, path }
}

/** Removes a job of which nothing was recorded, if it can be removed; one with anything in it stays as it is. */
export function discardJob(path: string, fs: FileSystem = nodeFileSystem): void {
  const journal = join(path, JOURNAL_NAME)
  try {
    if (sizeOf(journal, fs) === 0) fs.unlinkSync(journal)
    fs.rmdirSync(path)
  } catch {
    // It stays, and the list of jobs shows that it is empty.
  }
}

/** Whether a folder has a journal: a file, not a link to one. One that cannot be looked into counts as having one. */
export function hasJournal(path: string): boolean {
  try {
    return lstatSync(path).isDirectory() && lstatSync(join(path, JOURNAL_NAME)).isFile()
  } catch (error) {
    const errno = errnoOf(error)
    // To say that there is no job would be a guess, as on a network disk that does not answer.
    return errno !== undefined && !NOTHING_THERE.has(errno)
  }
}

const NOTHING_THERE = new Set(['ENOENT', 'ENOTDIR', 'ENAMETOOLONG'])

function sizeOf(path: string, fs: FileSystem): number | null {
  try {
    return fs.statSync(path).size
  } catch (error) {
    if (errnoOf(error) === 'ENOENT') return null
    throw error
  }
}

function foldersIn(home: string): string[] {
  try {
    return readdirSync(home, { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map((entry) => entry.name)
  } catch (error) {
    if (errnoOf(error) === 'ENOENT') return []
    throw error
  }
}

function readHeader<E extends Numbered>(
  path: string,
  parse: (raw: unknown) => E,
): { header: E | null; problem: HeaderProblem | null } {
  try {
    const { entries, problem } = readLines(firstLine(path), parse)
    return {
      header: entries[0] ?? null,
      problem: problem ?? (entries.length === 0 ? { kind: 'empty' } : null),
    }
  } catch (error) {
    return { header: null, problem: { kind: 'unreadable', code: errnoOf(error) ?? 'EIO' } }
  }
}

function firstLine(path: string): Buffer {
  return withFile(nodeFileSystem, path, 'r', (fd) => {
    let bytes = readBytes(nodeFileSystem, fd, 0, 4096)
    if (!bytes.includes(LINE_FEED)) bytes = readBytes(nodeFileSystem, fd, 0, MAX_LINE_BYTES + 1)
    return bytes.subarray(0, bytes.indexOf(LINE_FEED) + 1 || bytes.length)
  })
}

const LINE_FEED = 0x0a
const MANY = 10_000

function makeFolder(home: string, slug: string, fs: FileSystem): string {
  for (let number = 1; number < MANY; number += 1) {
    const folder = number === 1 ? slug : numberedSlug(slug, number)
    try {
      fs.mkdirSync(join(home, folder), { mode: 0o700 })
      return folder
    } catch (error) {
      if (errnoOf(error) !== 'EEXIST') throw error
    }
  }
  throw new Error(`there are ${MANY} jobs called ${slug} in ${home}`)
}
