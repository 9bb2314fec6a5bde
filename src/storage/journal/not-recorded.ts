import { errnoOf } from '../files/file-system.ts'

/**
 * Why nothing was recorded: the system's error code ('ENOSPC', 'EIO', 'EROFS', ...) or one of ours.
 * - short-write: the disk took only part of the bytes
 * - changed-underneath: the file's length is not the one that was read
 * - read-first: a write failed before, or nothing was read yet; read, then try again
 * - torn, damaged, replaced: the file needs mending before anything may follow
 * - newer: a later program has written in it, which this one could only contradict
 * - read-only: the journal was opened only to look at
 * - not-append-only: the data handed in lacks recorded entries, or has others in their place
 * - unreadable-entry: the reader would not accept the entry back
 */
export type NotRecordedCode =
  | 'short-write'
  | 'changed-underneath'
  | 'read-first'
  | 'torn'
  | 'damaged'
  | 'replaced'
  | 'newer'
  | 'read-only'
  | 'not-append-only'
  | 'unreadable-entry'
  | (string & {})

/** The entries of this write are not recorded; all earlier ones are. */
export class NotRecorded extends Error {
  override readonly name = 'NotRecorded'
  readonly code: NotRecordedCode
  readonly path: string
  /** False when bytes of this write could not be taken off the file again: they may show up at the next read. */
  readonly takenBack: boolean

  constructor(code: NotRecordedCode, path: string, options: { cause?: unknown; takenBack?: boolean } = {}) {
    super(`not recorded in ${path}: ${code}`, { cause: options.cause })
    this.code = code
    this.path = path
    this.takenBack = options.takenBack ?? true
  }
}

/** A system error as NotRecorded; any other error as it is. */
export function notRecorded(error: unknown, path: string, takenBack = true): unknown {
  if (error instanceof NotRecorded) return error
  const code = errnoOf(error)
  return code === undefined ? error : new NotRecorded(code, path, { cause: error, takenBack })
}
