import { Readable, Writable } from 'node:stream'
import { type FileSystem, writeAll } from '../files/file-system.ts'

/** Parts of bytes as a stream; the next one is asked for when the last was taken. */
export function streamOf(chunks: Iterable<Uint8Array>): Readable {
  return Readable.from(chunks, { objectMode: false })
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

/** How much waits to be written, in bytes. */
const CHUNK = 1 << 18
