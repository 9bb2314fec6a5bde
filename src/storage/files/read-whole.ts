import { type FileSystem, readBytes, withFile } from './file-system.ts'

/**
 * All bytes of a file, and when it was changed, in milliseconds. Throws the system's error, EOVERFLOW where it has more than
 * `most` bytes: none of it is read then.
 */
export function readWhole(path: string, most: number, fs: FileSystem): { bytes: Buffer; mtimeMs: number } {
  return withFile(fs, path, 'r', (fd) => {
    const { size, mtimeMs } = fs.fstatSync(fd)
    if (size > most) throw tooLong(path)
    return { bytes: readBytes(fs, fd, 0, size), mtimeMs }
  })
}

/** What the system says of a file that is too long for a program to open. */
export function tooLong(path: string): Error {
  return Object.assign(new Error(`EOVERFLOW: ${path} is too long`), { code: 'EOVERFLOW', path })
}
