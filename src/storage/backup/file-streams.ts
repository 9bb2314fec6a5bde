import { Readable, Writable } from 'node:stream'
import { closeQuietly, type FileSystem, readBytes, writeAll } from '../file-system.ts'

/** A part of an open file as a stream. It ends early where the file does. */
export function readStream(
  fs: FileSystem,
  fd: number,
  { start, end }: { start: number; end: number },
): Readable {
  return Readable.from(chunks(fs, fd, start, end), { objectMode: false })
}

/** A file from its start, up to so many bytes; it is opened when the first of them is asked for. */
export function fileStream(fs: FileSystem, path: string, bytes: number): Readable {
  return Readable.from(chunksOfFile(fs, path, bytes), { objectMode: false })
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

function* chunksOfFile(fs: FileSystem, path: string, bytes: number): Generator<Buffer> {
  const fd = fs.openSync(path, 'r')
  try {
    yield* chunks(fs, fd, 0, bytes)
  } finally {
    closeQuietly(fs, fd)
  }
}

function* chunks(fs: FileSystem, fd: number, start: number, end: number): Generator<Buffer> {
  for (let at = start; at < end; ) {
    const chunk = readBytes(fs, fd, at, Math.min(at + CHUNK, end))
    if (chunk.length === 0) return
    at += chunk.length
    yield chunk
  }
}

/** A part of a picture that is in memory at a time. */
const CHUNK = 1 << 18
