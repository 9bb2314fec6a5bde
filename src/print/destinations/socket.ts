import { createConnection } from 'node:net'
import { codeOf, type Sent } from './sent.ts'

/** Sends to a printer in the network by its raw port. Waits until all is sent, and no longer than a minute without progress. */
export function toSocket(
  bytes: Uint8Array,
  { host, port }: { host: string; port: number },
  { patience = 15_000 }: { patience?: number } = {},
): Promise<Sent> {
  const where = `${host.includes(':') ? `[${host}]` : host}:${port}`
  return new Promise((resolve) => {
    const socket = createConnection({ host, port })
    const failed = (code: string) => {
      const partly = socket.bytesWritten > 0
      socket.destroy()
      resolve({ ok: false, code, where, partly })
    }
    socket.setTimeout(patience, () => failed('no-answer'))
    socket.once('error', (error) => failed(codeOf(error)))
    socket.once('connect', () => socket.end(bytes))
    // Printers say nothing; what they do say is let go, so that the end can be seen.
    socket.resume()
    socket.once('finish', () => {
      // All is handed to the system; a printer that keeps the line open is not waited for.
      socket.once('close', () => resolve({ ok: true, where }))
      setTimeout(() => socket.destroy(), GRACE).unref()
    })
  })
}

const GRACE = 2000
