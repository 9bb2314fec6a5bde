import { badArchiveText } from './bad-archive.ts'
import { say } from './cures.ts'
import { counted } from './grammar.ts'
import { type Told, told } from './told.ts'

/** What can go wrong between the program and the disk, as the storage reports it. */
export type Trouble =
  /** The last line of a journal had no end, and was moved to a file of its own. */
  | { kind: 'set-aside'; path: string; bytes: number }
  /** A line is not what was written: the journal can only be read. */
  | { kind: 'damaged'; path: string; line: number; why: string; job?: number | undefined }
  /** An entry, at that line, of a version of the record that only a later program knows. */
  | { kind: 'newer'; path: string; line: number; version: number; known: number }
  /** The file was replaced under us, or the job was opened only to look at. */
  | { kind: 'replaced'; path: string; job?: number | undefined }
  | { kind: 'asked'; path: string }
  /** Another process has the lock. `since` is an ISO time. */
  | {
      kind: 'lock-held'
      path: string
      pid: number | null
      host: string | null
      since: string | null
      /** Who works there, where that was said. */
      by?: string | null
      elsewhere: boolean
    }
  /** `code` is the system's (`ENOSPC`) or the storage's own (`short-write`). */
  | { kind: 'not-recorded'; path: string; code: string; takenBack: boolean }
  /** A job that cannot be listed or opened: it has no first entry, or its file cannot be read. */
  | { kind: 'empty'; path: string }
  | { kind: 'unreadable'; path: string; code: string }
  /** A back-up that is not what was written; \`file\` is the file in it that gives it away. */
  | { kind: 'bad-archive'; path: string; why: string; file: string | null }

/** What went wrong with the disk or the lock, what still stands, and what to do. */
export function troubleText(trouble: Trouble): Told {
  switch (trouble.kind) {
    case 'set-aside':
      return told(
        `the last line of the journal had no end, ${counted(trouble.bytes, 'byte')} set aside in ${trouble.path}`,
        'look at the last entry: what was done after it is not recorded, so say it again',
        [`every entry before it stands`],
      )
    case 'damaged':
      return told(
        `line ${trouble.line} of ${trouble.path} is damaged: ${DAMAGE[trouble.why] ?? trouble.why}`,
        `${doctorWords(trouble)} says what can be saved, and in the open job ${say('doctor')}; until then leave the file as it is`,
        [
          trouble.line === 1
            ? 'nothing of the job can be shown or recorded until then'
            : `the ${counted(trouble.line - 1, 'entry', 'entries')} before it can be read, nothing can be recorded`,
        ],
      )
    case 'newer':
      return newerTold(trouble)
    case 'replaced':
      return told(
        `the file ${trouble.path} was replaced or cut while it was open`,
        `close the job and open it again; if a copy was put there by mistake, put the right file back first, or ask ${doctorWords(trouble)}`,
        ['what was read before is shown, nothing can be recorded'],
      )
    case 'asked':
      return told(`the job was opened only to look at`, 'open it again to record something')
    case 'lock-held':
      return lockTold(trouble)
    case 'not-recorded':
      return notRecordedTold(trouble)
    case 'empty':
      return told(
        `the file ${trouble.path} has no entry in it: the job was made and never opened, or something emptied the file`,
        `if it had entries, ${doctorWords(trouble, 'from PATH')} takes them from a copy or a back-up; else make the job again`,
      )
    case 'unreadable':
      return told(
        `the file ${trouble.path} cannot be read or written: ${cause(trouble.code).what}`,
        cause(trouble.code).cure,
      )
    case 'bad-archive':
      return badArchiveText(trouble)
    default:
      return trouble satisfies never
  }
}

/** What examines a job, typed in a shell: by its number, else by the name of its folder. */
function doctorWords({ path, job }: { path: string; job?: number | undefined }, how = ''): string {
  const folder = path.split(/[/\\]/).at(-2) ?? ''
  const which = job ?? (/^[\w.-]+$/.test(folder) ? folder : 'JOB')
  return say(['putback doctor', which, how].filter(Boolean).join(' '))
}

const DAMAGE: Record<string, string> = {
  checksum: 'its checksum does not agree',
  chain: 'it does not follow the line before it',
  'too-long': 'it is longer than any entry',
  json: 'it cannot be parsed',
  shape: 'it tells nothing that any putback writes',
  sequence: 'its number is not the next',
  law: 'it tells what cannot be, such as a piece that is in two places',
}

function newerTold({ path, line, version, known }: Extract<Trouble, { kind: 'newer' }>): Told {
  const shown =
    line === 1 ? 'nothing of the job can be shown here' : 'the job is shown as it stood before that entry'
  return told(
    `entry ${line} was written by a newer putback (version ${version} of the record, this program knows ${known}): ${shown}`,
    'get the newest putback and open the job with that; the file is as it should be, so leave it as it is',
    ['nothing can be recorded here', `file: ${path}`],
  )
}

function lockTold({ path, pid, host, since, by, elsewhere }: Extract<Trouble, { kind: 'lock-held' }>): Told {
  const where = pid === null ? 'another program' : `process ${pid}${host === null ? '' : ` on ${host}`}`
  const who = by ? `${by}, in ${where},` : where
  const cure =
    elsewhere || pid === null
      ? `say it again when it is free; if nothing records there any more, delete ${path}`
      : `close the other window, or wait, then say it again; if process ${pid} is no putback, delete ${path}`
  return told(`not recorded: ${who} has the job${since === null ? '' : ` since ${timeText(since)}`}`, cure, [
    STANDS,
  ])
}

function notRecordedTold({ path, code, takenBack }: Extract<Trouble, { kind: 'not-recorded' }>): Told {
  const { what, cure } = cause(code)
  const lines = [
    takenBack ? STANDS : `${STANDS}; of this one a part may be left in the file`,
    `file: ${path}`,
  ]
  const again = takenBack ? cure : `${cure}; look at the last entry before saying it again`
  return told(`not recorded: ${what}`, again, lines)
}

const STANDS = 'everything recorded before still stands'

interface Cause {
  what: string
  cure: string
}

/** What keeps the disk from what it was to do, by the system's code. */
export function causeText(code: string): string {
  return cause(code).what
}

function cause(code: string): Cause {
  return (
    CAUSES[code] ?? {
      what: `the system says ${code}`,
      cure: 'check the disk and the job folder, then say it again',
    }
  )
}

const GONE: Cause = {
  what: 'the folder or the disk is gone',
  cure: 'put the disk back in or the folder back in its place, then say it again',
}
const NOT_ALLOWED: Cause = {
  what: 'this user may not read or write there',
  cure: 'give this user the right to read and write in that folder, then say it again',
}
const FULL: Cause = { what: 'the disk is full', cure: 'make room on the disk, then say it again' }
const FAULTY: Cause = {
  what: 'the disk reports an error',
  cure: 'copy the job folder to another disk before anything else, and go on there',
}
const TOO_MANY_FILES: Cause = {
  what: 'too many files are open',
  cure: 'close other programs, then say it again',
}
const UNREACHABLE: Cause = {
  what: 'the network disk does not answer',
  cure: 'wait until it answers, then say it again',
}
const OURS: Cause = {
  what: 'the entry could not be read back as it would be written, which is a fault of this program',
  cure: 'say it in other words, and report the fault',
}

const CAUSES: Record<string, Cause> = {
  ENOSPC: FULL,
  EDQUOT: { what: 'the share of the disk for this user is full', cure: FULL.cure },
  EFBIG: { what: 'the file is as large as this disk allows', cure: 'move the job folder to another disk' },
  EROFS: {
    what: 'the disk can only be read',
    cure: 'make it writable or move the job folder to another disk, then say it again',
  },
  EACCES: NOT_ALLOWED,
  EPERM: NOT_ALLOWED,
  EIO: FAULTY,
  ELOOP: {
    what: 'a link lies in its place, and none is followed inside a job',
    cure: 'remove the link, or put the file or the folder itself in its place',
  },
  EFTYPE: {
    what: 'it is a pipe or a device, and no file',
    cure: 'look at what lies there, and name a file or put one in its place',
  },
  EOVERFLOW: {
    what: 'it is longer than the journal of any job',
    cure: 'look at what it is; if it is to be a journal, put that back from a copy',
  },
  'journal-full': {
    what: 'the journal has reached the length that can be read back',
    cure: 'make another job for what is still to be recorded',
  },
  ENOENT: GONE,
  ENOTDIR: GONE,
  ENODEV: GONE,
  ENXIO: GONE,
  ENOMEDIUM: GONE,
  EUCLEAN: FAULTY,
  ESTALE: UNREACHABLE,
  ETIMEDOUT: UNREACHABLE,
  EHOSTDOWN: UNREACHABLE,
  EHOSTUNREACH: UNREACHABLE,
  ENETDOWN: UNREACHABLE,
  ENETUNREACH: UNREACHABLE,
  ENOTCONN: UNREACHABLE,
  ECONNRESET: UNREACHABLE,
  ECONNABORTED: UNREACHABLE,
  EREMOTEIO: FAULTY,
  EUNKNOWN: {
    what: 'the disk or the network failed, and the system does not say how',
    cure: 'look whether the disk is there and answers, then say it again',
  },
  EMFILE: TOO_MANY_FILES,
  ENFILE: TOO_MANY_FILES,
  EBUSY: { what: 'another program holds the file', cure: 'close the other program, then say it again' },
  'short-write': { what: 'the disk took only a part of it, and may be full', cure: FULL.cure },
  'changed-underneath': {
    what: 'another program has written in the file',
    cure: 'close the other program; then look at the last entry and say it again',
  },
  'read-first': { what: 'a write failed before this one', cure: 'say it again' },
  torn: {
    what: 'the last line of the file has no end',
    cure: `close the job and open it again, or ask ${say('putback doctor')} what it is`,
  },
  damaged: {
    what: 'a line of the file is damaged, so nothing may follow it',
    cure: `ask ${say('doctor')} what can be saved; until then leave the file as it is`,
  },
  newer: {
    what: 'a newer putback has written in this job, and this program does not know what',
    cure: 'get the newest putback, open the job with that and say it again',
  },
  replaced: {
    what: 'the file was replaced or cut while it was open',
    cure: 'close the job and open it again',
  },
  'read-only': { what: 'the job was opened only to look at', cure: 'open it again to record something' },
  'not-append-only': OURS,
  'unreadable-entry': OURS,
}

/** `2026-05-02T14:03:20.000Z` as `2026-05-02 14:03 UTC`; anything else as it is. */
export function timeText(iso: string): string {
  return iso.replace(/^(\d{4}-\d\d-\d\d)T(\d\d:\d\d).*Z$/, '$1 $2 UTC')
}
