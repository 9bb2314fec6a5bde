import type { PrintTarget } from '../../lines/errand.ts'
import { toDevice } from './device.ts'
import { toFile } from './file.ts'
import type { Sent } from './sent.ts'
import { toSocket } from './socket.ts'

/** Sends bytes where the user said, and nowhere else. Standard output is the caller's. */
export function send(
  bytes: Uint8Array,
  target: Exclude<PrintTarget, { target: 'stdout' }>,
  { cwd }: { cwd: string },
): Promise<Sent> {
  switch (target.target) {
    case 'file':
      return toFile(bytes, target.path, cwd)
    case 'device':
      return toDevice(bytes, target.path, cwd)
    case 'tcp':
      return toSocket(bytes, target)
    default:
      return target satisfies never
  }
}
