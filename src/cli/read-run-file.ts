import { closeSync, openSync, readSync } from 'node:fs'

/** The longest file of commands that is read, in bytes: some hundred thousand lines. */
export const MOST_RUN_BYTES = 16 * 1024 * 1024

/**
 * All of a file of commands as text, of standard input where the path is null; it may be a pipe, and is read to its end.
 * Throws the system's error, EOVERFLOW where there is no end to it.
 */
export function readRunFile(path: string | null): string {
  const fd = path === null ? 0 : openSync(path, 'r')
  try {
    return readToEnd(fd)
  } finally {
    if (path !== null) closeSync(fd)
  }
}

function readToEnd(fd: number): string {
  const chunks: Buffer[] = []
  let length = 0
  for (;;) {
    const chunk = Buffer.allocUnsafe(CHUNK)
    const count = readSome(fd, chunk)
    if (count === 0) return Buffer.concat(chunks).toString('utf8')
    length += count
    if (length > MOST_RUN_BYTES) throw Object.assign(new Error('EOVERFLOW: too long'), { code: 'EOVERFLOW' })
    chunks.push(chunk.subarray(0, count))
  }
}

const CHUNK = 65_536

function readSome(fd: number, chunk: Buffer): number {
  for (;;) {
    try {
      return readSync(fd, chunk, 0, chunk.length, null)
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? error.code : ''
      // The end of a pipe is an error on Windows.
      if (code === 'EOF') return 0
      // Who handed the pipe over may have set it so that it does not wait for its writer.
      if (code !== 'EAGAIN') throw error
    }
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE_MS)
  }
}

const PAUSE_MS = 10
