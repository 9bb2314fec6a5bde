import { join } from 'node:path'
import { type FileSystem, nodeFileSystem, readBytes, withFile } from './files/file-system.ts'
import { replaceFile } from './files/replace-file.ts'
import { hasJournal } from './job-folders.ts'

const NAME = '.chosen'
const MAX_BYTES = 1024

/** Remembers the job that commands go to from now on. Throws the system's error, with the old choice kept. */
export function choose(home: string, folder: string, fs: FileSystem = nodeFileSystem): void {
  replaceFile(join(home, NAME), Buffer.from(`${folder}\n`), fs)
}

/** The folder of the job chosen last; null when there is none, it is gone, or the note is not legible. */
export function chosen(home: string, fs: FileSystem = nodeFileSystem): string | null {
  try {
    const note = withFile(fs, join(home, NAME), 'r', (fd) => readBytes(fs, fd, 0, MAX_BYTES))
    const folder = note.toString('utf8').replace(/\r?\n$/, '')
    return isPlainName(folder) && hasJournal(join(home, folder)) ? folder : null
  } catch {
    return null
  }
}

/** A name that stays inside the home. */
function isPlainName(name: string): boolean {
  return !/[/\\\p{C}]/u.test(name) && !['', '.', '..'].includes(name)
}
