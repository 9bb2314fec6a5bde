import { readdirSync } from 'node:fs'
import { hostname } from 'node:os'
import { basename, dirname, join } from 'node:path'
import { slugOf } from '../job-slug.ts'
import { isAlive } from '../lock/process-alive.ts'
import { type FileSystem, removeQuietly } from './file-system.ts'

let drafts = 0

/** A name beside a file for what shall take its place, told from those of every other program that runs. */
export function draftBeside(path: string): string {
  drafts += 1
  return `${startOf(path)}${process.pid}-${drafts}.tmp`
}

/**
 * Removes the drafts of a file that programs left when they were killed, as far as that is possible. One of a living
 * program may still be written, and so may one of another computer.
 */
export function removeDeadDrafts(fs: FileSystem, path: string): void {
  const start = basename(startOf(path))
  for (const name of namesIn(dirname(path))) {
    if (!name.startsWith(start)) continue
    const pid = Number(/^(\d{1,10})-\d+\.tmp$/.exec(name.slice(start.length))?.[1] ?? Number.NaN)
    if (pid > 0 && pid !== process.pid && !isAlive(pid)) removeQuietly(fs, join(dirname(path), name))
  }
}

function startOf(path: string): string {
  return `${path}.${slugOf(hostname())}-`
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder)
  } catch {
    return []
  }
}
