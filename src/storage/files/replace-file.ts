import { dirname } from 'node:path'
import { draftBeside, removeDeadDrafts } from './draft-beside.ts'
import {
  type FileSystem,
  nodeFileSystem,
  removeQuietly,
  syncFolder,
  withFile,
  writeAll,
} from './file-system.ts'

/**
 * Puts bytes in the place of a file, or makes it: a draft beside it, for this user only, is flushed and renamed over
 * it, and the folder flushed. Throws the system's error, which names `path`, with the old file untouched; where only
 * the last flush failed, the new bytes are in place and may not outlive a loss of power. A link there is replaced,
 * never followed. What killed programs left of their drafts is cleared away.
 */
export function replaceFile(path: string, bytes: Uint8Array, fs: FileSystem = nodeFileSystem): void {
  const draft = draftBeside(path)
  try {
    withFile(fs, draft, 'wx', (fd) => {
      writeAll(fs, fd, bytes)
      fs.fsyncSync(fd)
    })
    fs.renameSync(draft, path)
  } catch (error) {
    removeQuietly(fs, draft)
    // The draft's name would tell the user nothing.
    throw error instanceof Error ? Object.assign(error, { path }) : error
  }
  removeDeadDrafts(fs, path)
  syncFolder(fs, dirname(path))
}
