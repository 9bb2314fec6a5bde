import { randomUUID } from 'node:crypto'
import { link, mkdir, open, rm } from 'node:fs/promises'
import { basename, dirname, join, resolve } from 'node:path'
import { codeOf, type Sent } from './sent.ts'

/** Writes a new file, whole or not at all. One that is there already is never written over. */
export async function toFile(bytes: Uint8Array, path: string, cwd: string): Promise<Sent> {
  const where = resolve(cwd, path)
  const partial = join(dirname(where), `.${basename(where).slice(0, 100)}.${randomUUID().slice(0, 8)}.tmp`)
  try {
    await mkdir(dirname(where), { recursive: true })
    const file = await open(partial, 'wx', 0o600)
    try {
      await file.writeFile(bytes)
      await file.sync()
    } finally {
      await file.close()
    }
    // A link fails where the name is taken, which a renaming would not.
    await link(partial, where)
    return { ok: true, where }
  } catch (error) {
    const code = codeOf(error)
    return { ok: false, code: code === 'EEXIST' ? 'exists' : code, where, partly: false }
  } finally {
    await rm(partial, { force: true }).catch(() => undefined)
  }
}
