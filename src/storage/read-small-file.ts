import { type FileSystem, nodeFileSystem, readBytes, withFile } from './file-system.ts'

/**
 * All of a file that is a few lines long, as text in UTF-8. Throws the system's error, EOVERFLOW where it has more than
 * `most` bytes: none of it is read then.
 */
export function readSmallFile(path: string, most: number, fs: FileSystem = nodeFileSystem): string {
  return withFile(fs, path, 'r', (fd) => {
    const { size } = fs.fstatSync(fd)
    if (size > most)
      throw Object.assign(new Error(`EOVERFLOW: ${path} is too long`), { code: 'EOVERFLOW', path })
    return readBytes(fs, fd, 0, size).toString('utf8')
  })
}
