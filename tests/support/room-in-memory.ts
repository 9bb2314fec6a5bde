import { mkdtempSync, rmSync, statfsSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** Where Linux keeps files in memory. */
const MEMORY = '/dev/shm'
/** In bytes: several times what all tests together have lying about at once. */
const ENOUGH = 4 * 1024 ** 3

/** A folder for the temporary files of one run of the tests, removed at its end: in memory where there is room for it,
 * for a disk has each of ten thousand small journals wait until it is written; else where temporary files are. */
export function roomInMemory(): string {
  const room = mkdtempSync(join(hasRoom(MEMORY) ? MEMORY : tmpdir(), 'putback-tests-'))
  process.on('exit', () => rmSync(room, { recursive: true, force: true }))
  return room
}

function hasRoom(folder: string): boolean {
  try {
    const { bavail, bsize } = statfsSync(folder)
    return bavail * bsize >= ENOUGH
  } catch {
    return false
  }
}
