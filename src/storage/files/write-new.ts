import { errnoOf, type FileSystem, withFile, writeAll } from './file-system.ts'

/** Writes to the first name `<start><n>` that is free, for this user only, and syncs. Throws the system's error. */
export function writeNew(fs: FileSystem, start: string, bytes: Uint8Array): string {
  for (let n = 1; ; n += 1) {
    const path = `${start}${n}`
    try {
      withFile(fs, path, 'wx', (fd) => {
        writeAll(fs, fd, bytes)
        fs.fsyncSync(fd)
      })
      return path
    } catch (error) {
      if (errnoOf(error) !== 'EEXIST') throw error
    }
  }
}
