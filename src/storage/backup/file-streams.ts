import { Readable, Writable } from 'node:stream'
import { closeQuietly, type FileSystem, readBytes, writeAll } from '../file-system.ts'

/** Parts of bytes as a stream; the next one is asked for when the last was taken. */
export function streamOf(chunks: Iterable<Uint8Array>): Readable {
  return Readable.from(chunks, { objectMode: false })
}

/** A part of an open file, bit by bit, so that it is never in memory whole. It ends early where the file does. */
export function* chunksOf(
  fs: FileSystem,
  fd: number,
  { start, end }: { start: number; end: number },
): Generator<Buffer> {
  for (let at = start; at < end; ) {
    const chunk = readBytes(fs, fd, at, Math.min(at + CHUNK, end))
    if (chunk.length === 0) return
    at += chunk.length
    yield chunk
  }
}

/** A file from its start, up to so many bytes; it is opened when the first of them is asked for. */
export function* chunksOfFile(fs: FileSystem, path: string, bytes: number): Generator<Buffer> {
  const fd = fs.openSync(path, 'r')
  try {
    yield* chunksOf(fs, fd, { start: 0, end: bytes })
  } finally {
    closeQuietly(fs, fd)
  }
}

/** Where what is written goes to the end of an open file. */
export function writeStream(fs: FileSystem, fd: number): Writable {
  return new Writable({
    highWaterMark: CHUNK,
    write(chunk: Uint8Array, _encoding, done) {
      try {
        writeAll(fs, fd, chunk)
      } catch (error) {
        done(error as Error)
        return
      }
      done()
    },
  })
}

/** How much of a picture is in memory at a time. */
const CHUNK = 1 << 18
