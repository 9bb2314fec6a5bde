import { realpathSync, statSync } from 'node:fs'
import { basename, dirname, join, resolve } from 'node:path'
import manifest from '../../../package.json' with { type: 'json' }
import type { Errand } from '../../lines/errand.ts'
import { type Failed, failedByTrouble, refusedWith } from '../../photos/failed.ts'
import type { ErrandOutcome } from '../../session/errands.ts'
import type { Session } from '../../session/session.ts'
import { parseEntry } from '../../session/stored-entry.ts'
import { pictureIn } from '../../storage/backup/archive-names.ts'
import { backupsFolder } from '../../storage/backup/backups-folder.ts'
import {
  ArchiveExists,
  type ArchiveMade,
  type ArchiveTarget,
  writeArchive,
} from '../../storage/backup/write-archive.ts'
import { listJobs } from '../../storage/job-folders.ts'
import { pathNamed } from '../../storage/path-named.ts'
import {
  type BackupFacts,
  backupText,
  fileThereText,
  noFolderText,
  notBackedUpText,
  sameDiskText,
  someNotBackedUpText,
} from '../../words/backup.ts'
import type { Told } from '../../words/told.ts'
import { troubleOfError } from '../../words/trouble-of.ts'
import type { Desk } from '../desk.ts'
import { resultOf } from '../pending.ts'
import type { Result } from '../result.ts'
import { archiveProgress } from './archive-progress.ts'

type Asked = Extract<Errand, { errand: 'backup' }>

/** Where back-ups go, and when it is. */
interface BackupPlaces {
  /** The folder of the jobs. */
  home: string
  /** Where paths begin. */
  cwd: string
  now: Date
  tell: (progress: string) => void
}

/** Backs up the job in hand, or every job of its home. */
export function runBackup(
  { isAll, to }: Asked,
  session: Session,
  { home, cwd }: Pick<BackupPlaces, 'home' | 'cwd'>,
  tell: (progress: string) => void,
): Promise<ErrandOutcome> {
  const places = { home, cwd, now: new Date(session.stateNow().clock.at), tell }
  return isAll ? backUpAll(to, places) : backUpJob(dirname(session.store.path), to, places)
}

/** Backs up every job of a home, one after the other: one that cannot be is no reason to leave out the next. */
async function backUpAll(to: string | null, places: BackupPlaces): Promise<ErrandOutcome> {
  const jobs = listJobs(places.home, parseEntry)
  if (jobs.length === 0)
    return { ok: true, entries: [], text: ['There is no job to back up.'], answer: { backups: [] } }
  const target = await attempt(places.home, () => targetFolder(to, places))
  if ('ok' in target) return target
  const made: BackupFacts[] = []
  const failed: { folder: string; why: Told }[] = []
  for (const { path, folder } of jobs) {
    const done = await backUp(path, target, places)
    if ('ok' in done) failed.push({ folder, why: done.told })
    else made.push(done)
  }
  const text = [...made.flatMap(backupText), ...(made.length > 0 ? reminder(target.folder, places) : [])]
  if (failed.length === 0) return { ok: true, entries: [], text, answer: { backups: made } }
  const told = someNotBackedUpText(failed, jobs.length)
  return { ok: false, exit: 'not-recorded', code: 'not-all-backed-up', told, entries: [], text }
}

/** `backup all` on the command line, where no job has to be chosen. */
export async function backUpEvery(
  { shelf: { home }, cwd }: Desk,
  to: string | null,
  when: Pick<BackupPlaces, 'now' | 'tell'>,
): Promise<Result> {
  return resultOf(await backUpAll(to, { home, cwd, ...when }))
}

async function backUpJob(job: string, to: string | null, places: BackupPlaces): Promise<ErrandOutcome> {
  const target = await attempt(places.home, () => targetOf(to, places))
  if ('ok' in target) return target
  const made = await backUp(job, target, places)
  if ('ok' in made) return made
  const text = [...backupText(made), ...reminder(dirname(made.file), places)]
  return { ok: true, entries: [], text, answer: { backups: [made] } }
}

async function backUp(
  job: string,
  target: ArchiveTarget,
  { now, tell }: BackupPlaces,
): Promise<BackupFacts | Failed> {
  const options = { now, program: manifest.version, tell: archiveProgress(basename(job), tell) }
  return attempt('file' in target ? dirname(target.file) : target.folder, async () =>
    factsOf(await writeArchive(job, target, options)),
  )
}

function factsOf({ path, bytes, manifest: { folder, job, files, missing } }: ArchiveMade): BackupFacts {
  return {
    file: path,
    bytes,
    folder,
    job,
    pictures: files.filter(({ name }) => pictureIn(name) !== null).length,
    missing,
    changed: files.flatMap(({ name, changed }) => (changed ? [name] : [])),
  }
}

/** What the disk refuses as the outcome; `path` is what was being worked on. A fault of ours is thrown on. */
async function attempt<T>(path: string, work: () => T | Failed | Promise<T | Failed>): Promise<T | Failed> {
  try {
    return await work()
  } catch (error) {
    if (error instanceof ArchiveExists) return refusedWith('file-exists', fileThereText(error.path))
    const trouble = troubleOfError(error, path)
    if (trouble === null) throw error
    return { ...failedByTrouble(trouble, []), told: notBackedUpText(trouble, path) }
  }
}

/** A folder that is there, or a file in one; without a word, the folder of the home that is made for it. */
function targetOf(to: string | null, places: BackupPlaces): ArchiveTarget | Failed {
  if (to === null) return targetFolder(to, places)
  const path = resolve(places.cwd, pathNamed(to))
  if (!/\.zip$/i.test(path) || isFolder(path)) return targetFolder(to, places)
  const folder = dirname(path)
  if (!isFolder(folder)) return refusedWith('no-such-folder', noFolderText(folder))
  return { file: join(realpathSync(folder), basename(path)) }
}

function targetFolder(to: string | null, { home, cwd }: BackupPlaces): { folder: string } | Failed {
  if (to === null) return { folder: backupsFolder(home) }
  const path = resolve(cwd, pathNamed(to))
  return isFolder(path) ? { folder: realpathSync(path) } : refusedWith('no-such-folder', noFolderText(path))
}

function isFolder(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false
}

/** Beside the jobs, a back-up is no more than half of one. */
function reminder(folder: string, { home }: BackupPlaces): string[] {
  return statSync(folder).dev === statSync(home).dev ? [sameDiskText()] : []
}
