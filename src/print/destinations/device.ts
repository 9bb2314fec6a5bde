import { constants, type FileHandle, open, stat } from 'node:fs/promises'
import { resolve } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { codeOf, type Sent } from './sent.ts'

/**
 * Writes to a device that the system shows as a file, such as a printer on a cable. A plain file is no device. One that
 * takes nothing is given up after `patience` milliseconds without progress.
 */
export async function toDevice(
  bytes: Uint8Array,
  path: string,
  cwd: string,
  { patience = 15_000 }: { patience?: number | undefined } = {},
): Promise<Sent> {
  const where = resolve(cwd, path)
  let sent = 0
  try {
    const about = await stat(where)
    if (!about.isCharacterDevice() && !about.isFIFO())
      return { ok: false, code: 'no-device', where, partly: false }
    const device = await unlessBusy(patience, () => open(where, ONLY_WRITE))
    try {
      while (sent < bytes.length) sent += await unlessBusy(patience, () => written(device, bytes, sent))
    } finally {
      await device.close()
    }
    return { ok: true, where }
  } catch (error) {
    return { ok: false, code: codeOf(error), where, partly: sent > 0 }
  }
}

// Never made here: a name mistyped would otherwise become a file. And never waited for in the system, which holds the
// whole program while a printer has no paper, or nobody reads a pipe.
const ONLY_WRITE = constants.O_WRONLY | (constants.O_NONBLOCK ?? 0) | (constants.O_NOCTTY ?? 0)
const CHUNK = 16_384
const PAUSE = 50
/** Nobody reads the pipe yet; the device has its memory full. */
const BUSY = new Set(['ENXIO', 'EAGAIN'])

async function written(device: FileHandle, bytes: Uint8Array, at: number): Promise<number> {
  return (await device.write(bytes, at, Math.min(CHUNK, bytes.length - at))).bytesWritten
}

async function unlessBusy<T>(patience: number, work: () => Promise<T>): Promise<T> {
  for (let waited = 0; ; waited += PAUSE) {
    try {
      return await work()
    } catch (error) {
      if (!BUSY.has(codeOf(error))) throw error
      if (waited >= patience) throw Object.assign(new Error('no answer'), { code: 'no-answer' })
    }
    await pause(PAUSE)
  }
}
