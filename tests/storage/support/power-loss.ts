import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import type { FileSystem } from '../../../src/storage/files/file-system.ts'

/** A file system, and what would be left of it if the power went now. */
export interface PowerLoss {
  fs: FileSystem
  /** Writes what is left of a folder into another one, which must be empty. */
  leftOf(folder: string, into: string): void
}

interface OnDisk {
  bytes: Buffer
  /** Written since the last flush, as places in the file. */
  dirty: [from: number, to: number][]
}

/**
 * Follows what is on the disk behind a file system: bytes by the flush of their file, names by the flush of their folder,
 * and nothing else. It is hard where the systems that we know are hard: what a failed flush did not write counts as written
 * from then on, so a flush that comes after it does nothing for it (Linux). What is there at the start is on the disk.
 */
export function powerLoss(under: FileSystem, ...folders: string[]): PowerLoss {
  const files = new Map<string, OnDisk>()
  const names = new Set<string>()
  const open = new Map<number, string>()
  for (const folder of folders) {
    for (const name of readdirSync(folder)) {
      const path = join(folder, name)
      names.add(path)
      if (statSync(path).isFile()) files.set(path, { bytes: readFileSync(path), dirty: [] })
    }
  }
  const fileOf = (path: string): OnDisk => {
    const file = files.get(path) ?? { bytes: Buffer.alloc(0), dirty: [] }
    files.set(path, file)
    return file
  }

  const flush = (fd: number, real: () => void) => {
    const path = open.get(fd) ?? ''
    if (statSync(path).isDirectory()) {
      real()
      for (const name of names) if (dirname(name) === path) names.delete(name)
      for (const name of readdirSync(path)) names.add(join(path, name))
      return
    }
    const file = fileOf(path)
    const { dirty } = file
    file.dirty = []
    real()
    const now = readFileSync(path)
    const bytes = Buffer.alloc(now.length)
    file.bytes.copy(bytes, 0, 0, Math.min(file.bytes.length, now.length))
    for (const [from, to] of dirty) now.copy(bytes, from, from, Math.min(to, now.length))
    file.bytes = bytes
  }

  const fs: FileSystem = {
    ...under,
    openSync(path, flags, mode) {
      const fd = under.openSync(path, flags, mode)
      open.set(fd, path)
      if (flags === 'wx') files.set(path, { bytes: Buffer.alloc(0), dirty: [] })
      return fd
    },
    writeSync(fd, bytes, offset, length, position) {
      const path = open.get(fd) ?? ''
      const from = position ?? statSync(path).size
      try {
        return under.writeSync(fd, bytes, offset, length, position)
      } finally {
        // What is beyond its end was not written.
        fileOf(path).dirty.push([from, Math.min(from + bytes.length, statSync(path).size)])
      }
    },
    fsyncSync: (fd) => flush(fd, () => under.fsyncSync(fd)),
    fdatasyncSync: (fd) => flush(fd, () => under.fdatasyncSync(fd)),
    renameSync(from, to) {
      under.renameSync(from, to)
      files.set(to, fileOf(from))
      files.delete(from)
    },
  }

  return {
    fs,
    leftOf(folder, into) {
      mkdirSync(into, { recursive: true })
      for (const path of names) {
        if (dirname(path) !== folder) continue
        const file = files.get(path)
        if (file) writeFileSync(join(into, basename(path)), file.bytes)
      }
    },
  }
}
