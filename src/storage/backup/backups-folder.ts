import { join } from 'node:path'
import { type FileSystem, nodeFileSystem, syncFolder } from '../files/file-system.ts'
import { BACKUPS_NAME } from '../job-slug.ts'

/**
 * The folder of a home that back-ups go into when nobody says where, made where it is not there yet. Throws the system's
 * error.
 */
export function backupsFolder(home: string, fs: FileSystem = nodeFileSystem): string {
  const folder = join(home, BACKUPS_NAME)
  fs.mkdirSync(folder, { recursive: true, mode: 0o700 })
  // Each time: an archive is no safer than the name of its folder, whose flush may have failed when it was made.
  syncFolder(fs, home)
  return folder
}
