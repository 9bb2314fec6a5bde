import { createConnection, type Socket } from 'node:net'
import { codeOf, type Sent } from './sent.ts'

/**
 * Sends to a printer in the network by its raw port. Waits until the system has taken all, and gives up after
 * `patience` milliseconds in which it took nothing, whatever the other side says meanwhile.
 */
export function toSocket(
  bytes: Uint8Array,
  { host, port }: { host: string; port: number },
  { patience = 15_000 }: { patience?: number | undefined } = {},
): Promise<Sent> {
  const where = `${host.includes(':') ? `[${host}]` : host}:${port}`
  return new Promise((resolve) => {
    const socket = createConnection({ host, port })
    const failed = (code: string) => {
      clearTimeout(timer)
      socket.destroy()
      resolve({ ok: false, code, where, partly: socket.bytesWritten > 0 })
    }
    const timer = setTimeout(() => failed('no-answer'), patience)
    socket.once('error', (error) => failed(codeOf(error)))
    // Printers say nothing; what they do say is let go, so that the end can be seen.
    socket.resume()
    socket.once('connect', () => writeOn(socket, bytes, () => timer.refresh()))
    socket.once('finish', () => {
      clearTimeout(timer)
      // All is handed to the system; a printer that keeps the line open is not waited for.
      socket.once('close', () => resolve({ ok: true, where }))
      setTimeout(() => socket.destroy(), GRACE).unref()
    })
  })
}

const CHUNK = 65_536
const GRACE = 2000

function writeOn(socket: Socket, bytes: Uint8Array, progress: () => void, at = 0): void {
  const end = at + CHUNK
  if (end >= bytes.length) {
    socket.end(bytes.subarray(at))
    return
  }
  socket.write(bytes.subarray(at, end), (error) => {
    if (error) return
    progress()
    writeOn(socket, bytes, progress, end)
  })
}
