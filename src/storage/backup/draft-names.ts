import { rmSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { slugOf } from '../job-slug.ts'
import { isAlive } from '../lock/process-alive.ts'
import type { ArchiveFileSystem } from './archive-file-system.ts'

const START = `.putback-${slugOf(hostname())}-`
let drafts = 0

/** A name for what is being written, a file or a folder: hidden, and told from those of every other program that runs. */
export function draftName(): string {
  drafts += 1
  return `${START}${process.pid}-${drafts}.tmp`
}

/**
 * Removes the drafts of programs that were killed. One of a living program may still be written, and so may one of
 * another computer: a stick and a network folder have several.
 */
export function removeDeadDrafts(fs: ArchiveFileSystem, folder: string): void {
  for (const name of fs.readdirSync(folder)) {
    if (!name.startsWith(START)) continue
    const pid = Number(/^(\d{1,10})-\d+\.tmp$/.exec(name.slice(START.length))?.[1] ?? Number.NaN)
    if (pid > 0 && pid !== process.pid && !isAlive(pid)) removeDraft(join(folder, name))
  }
}

/** Removes a draft with all that is in it, if it is there and can be removed. */
export function removeDraft(path: string): void {
  try {
    rmSync(path, { recursive: true, force: true })
  } catch {}
}

/** `17-blue-twin-2026-11-30-1705`, by the clock of the user. */
export function archiveStem({ no, folder }: { no: number | null; folder: string }, now: Date): string {
  const two = (part: number) => String(part).padStart(2, '0')
  const day = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
  const time = `${two(now.getHours())}${two(now.getMinutes())}`
  return [...(no === null ? [] : [no]), slugOf(folder), day, time].join('-')
}
