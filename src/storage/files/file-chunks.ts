import { createHash } from 'node:crypto'
import { closeQuietly, type FileSystem, readBytes } from './file-system.ts'

/** A part of an open file, bit by bit, so that it is never in memory whole. It ends early where the file does. */
export function* chunksOf(
  fs: FileSystem,
  fd: number,
  { start = 0, end = Number.POSITIVE_INFINITY }: { start?: number; end?: number } = {},
): Generator<Buffer> {
  for (let at = start; at < end; ) {
    const chunk = readBytes(fs, fd, at, Math.min(at + CHUNK, end))
    if (chunk.length === 0) return
    at += chunk.length
    yield chunk
  }
}

/** A file from its start, up to so many bytes; it is opened when the first of them is asked for. Throws the system's error. */
export function* chunksOfFile(fs: FileSystem, path: string, bytes?: number): Generator<Buffer> {
  const fd = fs.openSync(path, 'r')
  try {
    yield* chunksOf(fs, fd, { start: 0, ...(bytes !== undefined && { end: bytes }) })
  } finally {
    closeQuietly(fs, fd)
  }
}

/** The SHA-256 of a file's bytes, as hex digits. Throws the system's error. */
export function sha256Of(fs: FileSystem, path: string): string {
  const hash = createHash('sha256')
  for (const chunk of chunksOfFile(fs, path)) hash.update(chunk)
  return hash.digest('hex')
}

/** How much of a file is in memory at a time, in bytes. */
const CHUNK = 1 << 18
