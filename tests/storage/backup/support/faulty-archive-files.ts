import {
  type ArchiveFileSystem,
  nodeArchiveFileSystem,
} from '../../../../src/storage/backup/archive-file-system.ts'

type Call = keyof ArchiveFileSystem

/** The real file system of archives, counting its calls; the one of a number fails, and from there on all, if so planted. */
export interface FaultyArchiveFiles {
  fs: ArchiveFileSystem
  plant(fault: { at: number; errno: string; onwards?: boolean }): void
  mend(): void
  /** The call that was hit since then. */
  readonly hit: Call | null
}

export function faultyArchiveFiles(): FaultyArchiveFiles {
  let fault = { at: 0, errno: '', onwards: false }
  let calls = 0
  let hit: Call | null = null
  const wrap = (name: Call) => {
    const real = nodeArchiveFileSystem[name] as (...args: unknown[]) => unknown
    return (...args: unknown[]) => {
      calls += 1
      const fails = calls === fault.at || (fault.onwards && calls > fault.at)
      // Nobody pulls a plug here: waiting for the disk would only take time.
      if (!fails) return name === 'fsyncSync' ? undefined : real(...args)
      hit ??= name
      // A file is closed whatever is said of it, and of a write that fails a part may be there.
      if (name === 'closeSync') real(...args)
      if (name === 'writeSync') {
        const [fd, bytes] = args as [number, Uint8Array]
        real(fd, bytes.subarray(0, Math.ceil(bytes.length / 2)))
      }
      throw Object.assign(new Error(`${fault.errno}: planted in ${name}`), {
        code: fault.errno,
        syscall: name,
      })
    }
  }
  const names = Object.keys(nodeArchiveFileSystem).filter((name) => CALLS.has(name as Call)) as Call[]
  return {
    fs: Object.fromEntries(names.map((name) => [name, wrap(name)])) as unknown as ArchiveFileSystem,
    plant(planted) {
      fault = { onwards: false, ...planted }
      calls = 0
      hit = null
    },
    mend() {
      fault = { at: 0, errno: '', onwards: false }
    },
    get hit() {
      return hit
    },
  }
}

const CALLS: ReadonlySet<Call> = new Set<Call>([
  'openSync',
  'closeSync',
  'fstatSync',
  'statSync',
  'readSync',
  'writeSync',
  'fdatasyncSync',
  'fsyncSync',
  'ftruncateSync',
  'unlinkSync',
  'renameSync',
  'mkdirSync',
  'rmdirSync',
  'linkSync',
  'readdirSync',
  'lstatSync',
])
