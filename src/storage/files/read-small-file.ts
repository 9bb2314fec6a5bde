import { type FileSystem, nodeFileSystem } from './file-system.ts'
import { readWhole } from './read-whole.ts'

/**
 * All of a file that is a few lines long, as text in UTF-8. Throws the system's error, EOVERFLOW where it has more than
 * `most` bytes: none of it is read then.
 */
export function readSmallFile(path: string, most: number, fs: FileSystem = nodeFileSystem): string {
  return readWhole(path, most, fs).bytes.toString('utf8')
}
