import {
  type ArchiveFileSystem,
  nodeArchiveFileSystem,
} from '../../../../src/storage/backup/archive-file-system.ts'
import { type Faulty, faulty } from '../../support/faulty-file-system.ts'

/** The real file system of archives, until a fault is planted. */
export function faultyArchiveFiles(): Faulty<ArchiveFileSystem> {
  return faulty(nodeArchiveFileSystem, Object.keys(nodeArchiveFileSystem) as (keyof ArchiveFileSystem)[])
}
