import fs from 'node:fs'
import {
  closeQuietly,
  errnoOf,
  type FileSystem,
  namingErrors,
  nodeFileSystem,
  removeQuietly,
} from './file-system.ts'

/** What giving a name asks of the file system. */
export interface NamingFileSystem extends FileSystem {
  linkSync(existing: string, name: string): void
}

/** The real one. */
export const nodeNamingFileSystem: NamingFileSystem = {
  ...nodeFileSystem,
  linkSync: namingErrors((existing, name) => fs.linkSync(existing, name)),
}

/**
 * Gives a draft its name, never over a file that is there: false then. The draft may stay under its old name as well:
 * remove it afterwards. Throws the system's error.
 */
export function putInPlace(fs: NamingFileSystem, draft: string, path: string): boolean {
  try {
    // A rename would go over what is there, so the name is made by a link.
    fs.linkSync(draft, path)
    return true
  } catch (error) {
    const errno = errnoOf(error) ?? ''
    if (errno === 'EEXIST') return false
    if (!NO_LINKS.has(errno)) throw error
  }
  try {
    // Without links, the name is reserved by an empty file of ours, and the rename goes over that.
    closeQuietly(fs, fs.openSync(path, 'wx', 0o600))
  } catch (error) {
    if (errnoOf(error) === 'EEXIST') return false
    throw error
  }
  try {
    fs.renameSync(draft, path)
  } catch (error) {
    removeQuietly(fs, path)
    throw error
  }
  return true
}

/** File systems without hard links: FAT and its kin, some of networks. */
const NO_LINKS = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK', 'EXDEV', 'EINVAL', 'EACCES'])
