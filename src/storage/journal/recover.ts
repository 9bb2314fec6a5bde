import { dirname, extname } from 'node:path'
import { type FileSystem, nodeFileSystem, readBytes, syncFolder, withFile } from '../files/file-system.ts'
import { writeNew } from '../files/write-new.ts'

/** A torn end of a journal, kept in a file of its own. */
export interface SetAside {
  path: string
  bytes: number
}

/**
 * Moves what follows the good bytes of a journal into a new file `journal.torn-<n>` beside it: the copy is on the
 * disk before the journal is cut. Only for a torn end, and only under the lock. Returns null when nothing follows;
 * throws the system's error, with the journal untouched or the copy whole.
 */
export function setAsideTornEnd(
  path: string,
  goodBytes: number,
  fs: FileSystem = nodeFileSystem,
): SetAside | null {
  return withFile(fs, path, 'r+', (fd) => {
    const torn = readBytes(fs, fd, goodBytes, fs.fstatSync(fd).size)
    if (torn.length === 0) return null
    const copy = writeNew(fs, `${path.slice(0, path.length - extname(path).length)}.torn-`, torn)
    syncFolder(fs, dirname(path))
    fs.ftruncateSync(fd, goodBytes)
    fs.fsyncSync(fd)
    return { path: copy, bytes: torn.length }
  })
}
