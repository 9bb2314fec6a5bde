import { randomUUID } from 'node:crypto'
import { copyFile, constants as fileFlags, link, mkdir, open, rm } from 'node:fs/promises'
import { basename, dirname, join, resolve } from 'node:path'
import { codeOf, type Sent } from './sent.ts'

/** Writes a new file, whole or not at all. One that is there already is never written over. */
export async function toFile(bytes: Uint8Array, path: string, cwd: string): Promise<Sent> {
  const where = resolve(cwd, path)
  const partial = join(dirname(where), `.${basename(where).slice(0, 100)}.${randomUUID().slice(0, 8)}.tmp`)
  try {
    await mkdir(dirname(where), { recursive: true, mode: 0o700 })
    await writeFlushed(partial, bytes)
    return await place(partial, where)
  } catch (error) {
    return { ok: false, code: codeOf(error), where, partly: false }
  } finally {
    await rm(partial, { force: true }).catch(() => undefined)
  }
}

async function writeFlushed(path: string, bytes: Uint8Array): Promise<void> {
  const file = await open(path, 'wx', 0o600)
  try {
    await file.writeFile(bytes)
    await file.sync()
  } finally {
    await file.close()
  }
}

/** A link fails where the name is taken, which a renaming would not. A stick may know no links: then a copy. */
async function place(partial: string, where: string): Promise<Sent> {
  try {
    await link(partial, where).catch((error) => {
      if (!NO_LINKS.has(codeOf(error))) throw error
      return copyFile(partial, where, fileFlags.COPYFILE_EXCL)
    })
    return { ok: true, where }
  } catch (error) {
    const code = codeOf(error)
    return { ok: false, code: code === 'EEXIST' ? 'exists' : code, where, partly: false }
  }
}

const NO_LINKS = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EINVAL', 'UNKNOWN'])
