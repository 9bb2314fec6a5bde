import { createHash } from 'node:crypto'
import { constants } from 'node:fs'
import { type FileHandle, open } from 'node:fs/promises'
import { errnoOf } from '../storage/files/file-system.ts'
import { localTime, type Taken } from './capture-time.ts'
import { formatOf, MAGIC_BYTES, type PictureFormat } from './picture-format.ts'
import { readLabels, Undecodable } from './read-labels.ts'
import { readPicture } from './read-picture.ts'

/** What a file in the folder turned out to be. */
export type Look =
  | {
      kind: 'picture'
      format: PictureFormat
      sha256: string
      taken: Taken | null
      /** When the file was last written, on the clock of this machine: good for a name, not for an order. */
      written: string
      codes: string[]
      unreadable: boolean
    }
  | { kind: 'broken'; why: BrokenWhy; errno?: string | undefined }
  | { kind: 'heif' }
  | { kind: 'other' }

export type BrokenWhy =
  | 'cut-short'
  | 'damaged'
  | 'too-many-pixels'
  | 'too-large'
  /** Its name says picture, and its bytes are something else. */
  | 'no-picture'
  /** The system would not let it be read; `errno` says why. */
  | 'unreadable'
  /** The decoder made nothing of it, or ended without an answer. */
  | 'undecodable'

/** The largest file that is read, in bytes. */
const MOST_BYTES = 100_000_000

/** Looks at one file and touches nothing. What is wrong with it is its answer; nothing is thrown for it. */
export async function lookAtFile(path: string): Promise<Look> {
  try {
    const file = await open(path, ONLY_READ)
    try {
      return await lookAt(file, path)
    } finally {
      await file.close()
    }
  } catch (error) {
    const errno = errnoOf(error)
    if (errno !== undefined) return { kind: 'broken', why: 'unreadable', errno }
    if (error instanceof Undecodable) return { kind: 'broken', why: 'undecodable' }
    throw error
  }
}

// A link or a pipe put in the file's place after the folder was listed is not followed and not waited for.
const ONLY_READ = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0)

async function lookAt(file: FileHandle, path: string): Promise<Look> {
  const stat = await file.stat()
  if (!stat.isFile()) return { kind: 'other' }
  const start = new Uint8Array(MAGIC_BYTES)
  const { bytesRead } = await file.read(start, 0, MAGIC_BYTES, 0)
  const format = formatOf(start.subarray(0, bytesRead))
  if (format === 'heif') return { kind: 'heif' }
  if (format === 'other')
    return PICTURE_NAME.test(path) ? { kind: 'broken', why: 'no-picture' } : { kind: 'other' }
  if (stat.size > MOST_BYTES) return { kind: 'broken', why: 'too-large' }

  const bytes = await readWhole(file, stat.size)
  const reading = await readPicture(bytes)
  if (reading.kind !== 'picture') return reading
  return {
    ...reading,
    sha256: createHash('sha256').update(bytes).digest('hex'),
    written: localTime(stat.mtime),
    ...(await readLabels(bytes)),
  }
}

const PICTURE_NAME = /\.(?:jpe?g|jpe|png)$/i

/** As many bytes as the file had: one that still grows is read up to there, and does not agree when it is copied. */
async function readWhole(file: FileHandle, size: number): Promise<Uint8Array> {
  const bytes = new Uint8Array(size)
  let filled = 0
  while (filled < size) {
    const { bytesRead } = await file.read(bytes, filled, size - filled, filled)
    if (bytesRead === 0) break
    filled += bytesRead
  }
  return bytes.subarray(0, filled)
}
