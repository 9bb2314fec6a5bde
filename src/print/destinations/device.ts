import { constants, open, stat } from 'node:fs/promises'
import { resolve } from 'node:path'
import { codeOf, type Sent } from './sent.ts'

/** Writes to a device that the system shows as a file, such as a printer on a cable. A plain file is no device. */
export async function toDevice(bytes: Uint8Array, path: string, cwd: string): Promise<Sent> {
  const where = resolve(cwd, path)
  let begun = false
  try {
    const about = await stat(where)
    if (!about.isCharacterDevice() && !about.isFIFO())
      return { ok: false, code: 'no-device', where, partly: false }
    // Never made here: a name mistyped would otherwise become a file.
    const device = await open(where, constants.O_WRONLY)
    try {
      begun = true
      for (let at = 0; at < bytes.length; ) {
        at += (await device.write(bytes, at, Math.min(CHUNK, bytes.length - at))).bytesWritten
      }
    } finally {
      await device.close()
    }
    return { ok: true, where }
  } catch (error) {
    return { ok: false, code: codeOf(error), where, partly: begun }
  }
}

const CHUNK = 16_384
