import { readdirSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { examine, type Looking } from '../damage/examine.ts'
import type { Examination } from '../damage/finding.ts'
import { errnoOf, type FileSystem, nodeFileSystem, syncFolder } from '../files/file-system.ts'
import { replaceFile } from '../files/replace-file.ts'
import { writeNew } from '../files/write-new.ts'
import { LockHeld, withLock } from '../lock/lock.ts'
import { JOURNAL_LOCK_NAME, JOURNAL_NAME, readJournalBytes } from './journal-file.ts'
import { MAX_LINE_BYTES, type Numbered } from './line.ts'

export interface MendOptions<E> extends Looking<E> {
  /** `mend`: only what is certain. `cut`: what stands before the damage is kept, the rest goes into a file of its own. */
  how: 'mend' | 'cut'
  /** How long to wait for another process, in milliseconds. */
  lockLimit?: number | undefined
  fs?: FileSystem | undefined
}

/** What came of mending. What was found is told as it was before. */
export type Mending<E> = { found: Examination<E> } & (
  | { done: true; copy: string; rest: string | null }
  /** Nothing to mend; nothing certain; nothing that would be left; or the entries of a newer program. */
  | { done: false; why: 'sound' | 'not-certain' | 'nothing-stands' | 'newer' }
)

/**
 * Reads and examines the journal in a job's folder, and writes nothing. An end that is torn is looked at again under the
 * lock, if that can be had: another process may be writing it. Throws the system's error when it cannot be read.
 */
export function lookAtJournal<E extends Numbered>(
  folder: string,
  looking: Looking<E>,
  { lockLimit, fs = nodeFileSystem }: Pick<MendOptions<E>, 'lockLimit' | 'fs'> = {},
): Examination<E> {
  const look = () =>
    examine(readJournalBytes(join(folder, JOURNAL_NAME), fs).bytes, withAsides(folder, looking, fs))
  const found = look()
  if (!found.findings.some(({ kind }) => kind === 'torn' || kind === 'unended')) return found
  try {
    return withLock(join(folder, JOURNAL_LOCK_NAME), { limit: lockLimit, fs }, look)
  } catch (error) {
    if (error instanceof LockHeld || errnoOf(error) !== undefined) return found
    throw error
  }
}

/**
 * Mends the journal in a job's folder under its lock. First a copy of the file as it is, `journal.before-mending-<n>`,
 * and what is cut off, `journal.cut-<n>`, are on the disk; then the mended file takes its place at once, and is read back.
 * Throws LockHeld or the system's error, with the old file or the mended one in place.
 */
export function mendJournal<E extends Numbered>(folder: string, options: MendOptions<E>): Mending<E> {
  const { how, lockLimit, fs = nodeFileSystem } = options
  const path = join(folder, JOURNAL_NAME)
  return withLock(join(folder, JOURNAL_LOCK_NAME), { limit: lockLimit, fs }, () => {
    const { bytes } = readJournalBytes(path, fs)
    const found = examine(bytes, withAsides(folder, options, fs))
    const why = whyNot(found, how)
    if (why !== null) return { found, done: false, why }
    const copy = writeNew(fs, join(folder, 'journal.before-mending-'), bytes)
    const isCut = found.verdict === 'lossy' && found.rest.length > 0
    const rest = isCut ? writeNew(fs, join(folder, 'journal.cut-'), found.rest) : null
    syncFolder(fs, dirname(path))
    replaceFile(path, found.mended, fs)
    if (!readJournalBytes(path, fs).bytes.equals(found.mended)) throw readBackOtherwise(path)
    return { found, done: true, copy, rest }
  })
}

/**
 * A torn end that was set aside may be a whole entry, of whose line only the feed was missing or wrong. As long as nothing
 * was recorded after it, it still follows on the last line.
 */
function withAsides<E>(folder: string, looking: Looking<E>, fs: FileSystem): Looking<E> {
  const asides = tornIn(folder).flatMap((name) => {
    const torn = unlessUnreadable(() => readJournalBytes(join(folder, name), fs).bytes)
    return torn === null || torn.length > MAX_LINE_BYTES
      ? []
      : [Buffer.concat([torn, FEED]), Buffer.concat([torn.subarray(0, -1), FEED])]
  })
  return { ...looking, others: [...(looking.others ?? []), ...asides] }
}

const FEED = Buffer.from('\n')
const MOST_ASIDES = 20

function tornIn(folder: string): string[] {
  const names = unlessUnreadable(() => readdirSync(folder)) ?? []
  return names.filter((name) => /^journal\.torn-\d+$/.test(name)).slice(-MOST_ASIDES)
}

function unlessUnreadable<T>(work: () => T): T | null {
  try {
    return work()
  } catch (error) {
    if (errnoOf(error) === undefined) throw error
    return null
  }
}

function whyNot<E>({ verdict, entries }: Examination<E>, how: 'mend' | 'cut'): NotDone | null {
  if (verdict === 'sound' || verdict === 'newer') return verdict
  if (verdict === 'certain') return null
  if (how === 'mend') return 'not-certain'
  return entries.length === 0 ? 'nothing-stands' : null
}

type NotDone = Extract<Mending<unknown>, { done: false }>['why']

/** A disk that gives back other bytes than it took. */
function readBackOtherwise(path: string): Error {
  return Object.assign(new Error(`EIO: ${path} was read back otherwise`), { code: 'EIO', path })
}
