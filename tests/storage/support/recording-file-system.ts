import { type FileSystem, nodeFileSystem } from '../../../src/storage/files/file-system.ts'

/** The file system, noting in `calls` what changes a file and what makes that durable. */
export function recordingFileSystem(calls: string[], fs: FileSystem = nodeFileSystem): FileSystem {
  const noted = <K extends 'writeSync' | 'fdatasyncSync' | 'fsyncSync' | 'ftruncateSync' | 'renameSync'>(
    name: K,
  ) => {
    const real = fs[name] as (...args: unknown[]) => unknown
    return (...args: unknown[]) => {
      calls.push(name)
      return real(...args)
    }
  }
  return {
    ...fs,
    writeSync: noted('writeSync') as FileSystem['writeSync'],
    fdatasyncSync: noted('fdatasyncSync'),
    fsyncSync: noted('fsyncSync'),
    ftruncateSync: noted('ftruncateSync'),
    renameSync: noted('renameSync'),
  }
}
