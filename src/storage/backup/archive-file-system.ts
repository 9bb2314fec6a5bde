import fs from 'node:fs'
import { errnoOf, namingErrors } from '../files/file-system.ts'
import { type NamingFileSystem, nodeNamingFileSystem } from '../files/put-in-place.ts'

/** What archives ask of the file system beyond journals. Links are looked at, never followed. */
export interface ArchiveFileSystem extends NamingFileSystem {
  readdirSync(path: string): string[]
  lstatSync(path: string): {
    size: number
    mtimeMs: number
    dev: number
    isFile(): boolean
    isDirectory(): boolean
  }
}

/** The real one. */
export const nodeArchiveFileSystem: ArchiveFileSystem = {
  ...nodeNamingFileSystem,
  readdirSync: namingErrors((path) => fs.readdirSync(path)),
  lstatSync: namingErrors((path) => fs.lstatSync(path)),
}

/** Whether a path is a file of its own, a folder of its own, something else, or nothing. Throws any other error. */
export function kindOf(fs: ArchiveFileSystem, path: string): 'file' | 'folder' | 'other' | null {
  try {
    const stat = fs.lstatSync(path)
    return stat.isFile() ? 'file' : stat.isDirectory() ? 'folder' : 'other'
  } catch (error) {
    if (errnoOf(error) === 'ENOENT' || errnoOf(error) === 'ENOTDIR') return null
    throw error
  }
}
