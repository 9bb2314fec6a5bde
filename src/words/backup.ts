import { say } from './cures.ts'
import { counted, isAre } from './grammar.ts'
import { causeText, type Trouble, troubleText } from './storage-troubles.ts'
import { type Told, told } from './told.ts'

/** A back-up that was made, as its archive tells of itself. */
export interface BackupFacts {
  file: string
  bytes: number
  /** The name of the job's folder. */
  folder: string
  job: JobFacts
  pictures: number
  /** What the record names and is not in it, and why. */
  missing: readonly { name: string; why: string }[]
  /** Pictures whose bytes are not those that the record names. */
  changed: readonly string[]
}

export interface JobFacts {
  no: number | null
  name: string | null
  entries: number
  /** The first line of the journal that is not what was written. */
  hurt: { line: number; why: string } | null
}

/** What came of a back-up: where it lies, and all that is not in it or not whole. */
export function backupText({ file, bytes, folder, job, pictures, missing, changed }: BackupFacts): string[] {
  const holds = [counted(job.entries, 'entry', 'entries'), counted(pictures, 'picture'), sizeText(bytes)]
  return [
    `Backed up and read back whole: ${jobText(job, folder)}: ${holds.join(', ')}.`,
    `    in ${file}`,
    ...hurtText(job, 'was put in as it is').map(indented),
    ...missingText(missing).map(indented),
    ...changedText(changed).map(indented),
  ]
}

/** What a back-up does not guard against, where it lies beside what it is to guard. */
export function sameDiskText(): string {
  return 'It lies on the same disk as the job, and goes with it: copy it to a stick or another computer, or say where with "backup to FOLDER".'
}

/** What came of a restoring. */
export function restoredText({
  path,
  folder,
  job,
  pictures,
  missing,
}: Pick<BackupFacts, 'folder' | 'job' | 'pictures' | 'missing'> & { path: string }): string[] {
  const holds = [counted(job.entries, 'entry', 'entries'), counted(pictures, 'picture')]
  return [
    `Restored, every byte as it was put in: ${jobText(job, folder)}: ${holds.join(', ')}.`,
    `    in ${path}`,
    ...hurtText(job, 'is as it was then').map(indented),
    ...missingText(missing).map(indented),
  ]
}

/** A job of the home that a restored one would be mistaken for. */
export function inTheWayText(
  by: { why: 'same-job' | 'same-number'; path: string; no: number; name: string },
  file: string,
): Told {
  const job = `job ${by.no}, ${by.name}`
  if (by.why === 'same-job') {
    return told(
      `the job of this back-up is here already: ${job}, in ${by.path}`,
      `${say(`merge ${file}`)} in that job brings the two together; to go back to the back-up, move that folder out of the home first`,
      ['nothing was restored: no job is ever written over'],
    )
  }
  return told(
    `another job here has the number of the one in this back-up: ${job}, in ${by.path}`,
    `restore it into a home of its own: ${say(`putback --home DIR restore ${file}`)}; or move that folder out of the home first`,
    ['nothing was restored: the labels of the one would be read as those of the other'],
  )
}

/** The name that a back-up was to have is taken. */
export function fileThereText(file: string): Told {
  return told(
    `${file} is there already, and nothing is written over it`,
    `say another name, or ${say('backup')} for a free one`,
  )
}

/** The folder that a back-up was to go into is not there: making it could fill the disk behind an empty mount. */
export function noFolderText(path: string): Told {
  return told(`there is no folder ${path}`, 'plug the stick in, or make the folder, then say it again')
}

/** A folder was named where a back-up was to be; `found`: the archives in it, the newest first. */
export function folderNamedText(path: string, found: readonly string[]): Told {
  return found.length === 0
    ? told(`${path} is a folder, and there is no back-up in it`, 'name the file that "backup" made')
    : told(`${path} is a folder, and one file is restored`, `name the one in it: ${some(found)}`)
}

/** The back-up that was named is not there. */
export function noBackupText(path: string): Told {
  return told(
    `there is no file ${path}`,
    'plug the stick in, or look how the file is called, then say it again',
    ['nothing was restored'],
  )
}

/** Why no back-up was made in that place. */
export function notBackedUpText(trouble: Trouble, place: string): Told {
  const { what, lines, cure } = notBackedUp(trouble, place)
  const stands = lines.filter((line) => line.startsWith('File:'))
  return told(what.replace(/^Not recorded: /, 'not backed up: '), cure, [
    ...stands,
    'no back-up was made, and the job is as it was',
  ])
}

function notBackedUp(trouble: Trouble, place: string): Told {
  // A draft in that place has a name that says nothing to anybody.
  if (trouble.kind === 'unreadable' && trouble.path.startsWith(place))
    return told(
      `nothing can be written in ${place}: ${causeText(trouble.code)}`,
      `name another folder with ${say('backup to FOLDER')}, or put that right, then say it again`,
    )
  if (trouble.kind !== 'bad-archive') return troubleText(trouble)
  return told(
    `what was written there does not read back as it was written`,
    `that disk is faulty: name a folder on another with ${say('backup to FOLDER')}`,
  )
}

/** What came of a back-up of every job, where some of them could not be. */
export function someNotBackedUpText(failed: readonly { folder: string; why: Told }[], all: number): Told {
  return told(
    `${failed.length} of ${counted(all, 'job')} ${isAre(failed.length)} not backed up`,
    failed[0]?.why.cure ?? '',
    failed.map(({ folder, why }) => `${folder}: ${why.what}`),
  )
}

function jobText({ no, name }: JobFacts, folder: string): string {
  if (no === null) return `the job in ${folder}`
  return `job ${no}${name === null ? '' : `, ${name}`}`
}

function hurtText({ hurt }: JobFacts, stands: string): string[] {
  if (hurt === null) return []
  if (hurt.why === 'newer')
    return [`Entry ${hurt.line} is of a newer putback: it is in there, and ${stands}.`]
  return [
    `THE RECORD IS HURT at line ${hurt.line}, and ${stands}: ${say('putback doctor')} says what can be saved.`,
  ]
}

function missingText(missing: BackupFacts['missing']): string[] {
  if (missing.length === 0) return []
  const gone = missing.map(({ name, why }) => `${name} (${WHY_MISSING[why] ?? why})`)
  return [
    `NOT COMPLETE: ${counted(missing.length, 'file')} of the job ${isAre(missing.length)} not in it: ${some(gone)}.`,
    `    ${say('photos import FOLDER')} brings a picture back; then back up again.`,
  ]
}

const WHY_MISSING: Record<string, string> = {
  gone: 'not there',
  name: 'a name that not every system can have',
  short: 'changed while it was read',
  EACCES: 'no right to read it',
  EIO: 'the disk reports an error',
}

function changedText(changed: readonly string[]): string[] {
  if (changed.length === 0) return []
  return [
    `${counted(changed.length, 'picture')} ${isAre(changed.length)} not as the record says, and in it as found: ${some(changed)}.`,
  ]
}

/** The first few of many. */
function some(names: readonly string[]): string {
  const more = names.length - MOST_NAMED
  return more > 0 ? `${names.slice(0, MOST_NAMED).join(', ')} and ${more} more` : names.join(', ')
}

const MOST_NAMED = 5

function sizeText(bytes: number): string {
  if (bytes < 1000) return counted(bytes, 'byte')
  if (bytes < 1_000_000) return `${(bytes / 1000).toFixed(0)} kB`
  return `${(bytes / 1_000_000).toFixed(1)} MB`
}

function indented(line: string): string {
  return `    ${line}`
}
