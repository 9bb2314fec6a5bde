import type { Dirent } from 'node:fs'
import { readdir } from 'node:fs/promises'

export interface FolderListed {
  /** The names of its files, in the order a person counts: IMG_9 before IMG_10. */
  files: string[]
  /** How many of each were passed by. */
  folders: number
  links: number
  /** Pipes, sockets, devices. */
  others: number
}

/** Lists a folder itself: nothing below it, and nothing that a link leads to. Throws the system's error. */
export async function listFolder(path: string): Promise<FolderListed> {
  const entries = await readdir(path, { withFileTypes: true })
  const count = (is: (entry: Dirent) => boolean) => entries.filter(is).length
  const files = entries.filter((entry) => entry.isFile()).map(({ name }) => name)
  const folders = count((entry) => entry.isDirectory())
  const links = count((entry) => entry.isSymbolicLink())
  return {
    files: files.sort(byName),
    folders,
    links,
    others: entries.length - files.length - folders - links,
  }
}

/** Numbers in names count as numbers; equal but for case, the code points decide. */
export function byName(one: string, two: string): number {
  return collator.compare(one, two) || (one < two ? -1 : one > two ? 1 : 0)
}

const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' })
