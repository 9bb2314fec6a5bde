import { join } from 'node:path'
import { toFile } from './file.ts'
import type { Sent } from './sent.ts'

/** Writes a file under the first name that is free: `plan.pdf`, `plan-2.pdf`. */
export async function toFreeFile(
  bytes: Uint8Array,
  { folder, name, ending }: { folder: string; name: string; ending: string },
): Promise<Sent> {
  for (let number = 1; ; number += 1) {
    const file = number === 1 ? `${name}.${ending}` : `${name}-${number}.${ending}`
    const sent = await toFile(bytes, join(folder, file), folder)
    if (sent.ok || sent.code !== 'exists' || number === MOST) return sent
  }
}

const MOST = 10_000
