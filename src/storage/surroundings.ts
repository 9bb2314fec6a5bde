import { lstatSync, readdirSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { sha256Of } from './files/file-chunks.ts'
import { errnoOf, nodeFileSystem } from './files/file-system.ts'
import { JOURNAL_LOCK_NAME, JOURNAL_NAME } from './journal/journal-file.ts'
import { type Found, isHolderAlive, readLock } from './lock/lock-holder.ts'
import { PHOTOS_NAME } from './photo-files.ts'

/** A picture as the record has it. */
export interface RecordedPicture {
  file: string
  sha256: string
}

/**
 * What lies around a journal and is worth knowing.
 * - picture-missing, picture-changed: the record names it, and it is not there, or not the one that was recorded
 * - link: a link where a file or a folder of the job should be; nothing is read through it
 * - open-to-others: other users of this machine may read or write it
 * - set-aside, draft: what an earlier trouble or a killed program left
 * - lock: of a process that is dead, lives, cannot be asked, or is not named
 */
export type Concern =
  | { kind: 'picture-missing' | 'picture-changed' | 'link' | 'open-to-others' | 'draft'; path: string }
  | { kind: 'set-aside'; path: string; bytes: number }
  | {
      kind: 'lock'
      path: string
      pid: number | null
      host: string | null
      since: string | null
      holder: Living
    }

export type Living = 'dead' | 'living' | 'elsewhere' | 'unnamed'

/** Looks over the folder of a job and the pictures that its record names, and changes nothing. Reads each picture whole. */
export function lookAround(folder: string, pictures: readonly RecordedPicture[]): Concern[] {
  const names = namesIn(folder)
  const photos = join(folder, PHOTOS_NAME)
  const isLinked = lstatSync(photos, { throwIfNoEntry: false })?.isSymbolicLink() ?? false
  const own = isLinked ? [] : pictures
  return [
    ...[folder, join(folder, JOURNAL_NAME), photos].flatMap(ownFile),
    ...own.flatMap(({ file, sha256 }) => ofPicture(join(photos, file), sha256)),
    ...names.flatMap((name) => ofName(join(folder, name), name)),
  ]
}

/** Links, and rights that are wider than this user's. Windows tells rights in another way. */
function ownFile(path: string): Concern[] {
  const stat = lstatSync(path, { throwIfNoEntry: false })
  if (stat === undefined) return []
  if (stat.isSymbolicLink()) return [{ kind: 'link', path }]
  return process.platform !== 'win32' && (stat.mode & 0o077) !== 0 ? [{ kind: 'open-to-others', path }] : []
}

function ofPicture(path: string, sha256: string): Concern[] {
  try {
    const stat = lstatSync(path, { throwIfNoEntry: false })
    if (stat?.isSymbolicLink()) return [{ kind: 'link', path }]
    if (!stat?.isFile()) return [{ kind: 'picture-missing', path }]
    return sha256Of(nodeFileSystem, path) === sha256 ? [] : [{ kind: 'picture-changed', path }]
  } catch (error) {
    if (errnoOf(error) === undefined) throw error
    // What cannot be read cannot be shown either.
    return [{ kind: 'picture-missing', path }]
  }
}

function ofName(path: string, name: string): Concern[] {
  const stat = lstatSync(path, { throwIfNoEntry: false })
  if (!stat?.isFile()) return []
  if (/^journal\.(?:torn|cut|before-[a-z]+)-/.test(name))
    return [{ kind: 'set-aside', path, bytes: stat.size }]
  if (name.endsWith('.tmp')) return [{ kind: 'draft', path }]
  return name === JOURNAL_LOCK_NAME || name.startsWith(`${JOURNAL_LOCK_NAME}.`) ? ofLock(path) : []
}

function ofLock(path: string): Concern[] {
  const found = readLock(path, nodeFileSystem)
  if (found === null) return []
  const { pid = null, host = null, since = null } = found.holder ?? {}
  return [{ kind: 'lock', path, pid, host, since, holder: livingOf(found) }]
}

function livingOf({ holder }: Found): Living {
  if (holder === null) return 'unnamed'
  if (holder.host !== hostname()) return 'elsewhere'
  return isHolderAlive(holder) ? 'living' : 'dead'
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder).sort()
  } catch (error) {
    if (errnoOf(error) === undefined) throw error
    return []
  }
}
