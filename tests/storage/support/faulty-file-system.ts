import { type FileSystem, nodeFileSystem } from '../../../src/storage/files/file-system.ts'
import type { Chance } from '../../support/damage/chance.ts'

/** A call that storage makes. */
export type FileSystemCall = keyof FileSystem

/**
 * Which call fails, counted from 1 over all calls, or over those of one name; `onwards` lets every later one fail as well. A
 * write that is `short` takes the first half of its bytes, and says so.
 */
export interface Fault<Name = FileSystemCall> {
  at: number
  errno: string
  onwards?: boolean
  only?: Name
}

/** A real file system, until a fault is planted. */
export type Faulty<F, Name extends keyof F = keyof F> = F & {
  plant(fault: Fault<Name>): void
  /** Fails the next call of that name. A write that fails has written the first half of its bytes. */
  plantIn(call: Name, errno: string | 'short'): void
  /** Fails so many of all calls, 0 to 1, each with one of the usual errors. */
  plantAtRandom(chance: Chance, rate: number): void
  mend(): void
  /** The call the fault hit, and how many calls were made since it was planted. */
  readonly hit: Name | null
  readonly calls: number
}

export type FaultyFileSystem = Faulty<FileSystem>

export function faultyFileSystem(): FaultyFileSystem {
  return faulty(nodeFileSystem, FILE_SYSTEM_CALLS)
}

/** @param names all of its calls */
export function faulty<F extends FileSystem>(files: F, names: readonly (keyof F & string)[]): Faulty<F> {
  type Call = keyof F & string
  const state = {
    hit: null as Call | null,
    calls: 0,
    fails: (_: Call): string | null => null,
  }

  const wrap = (name: Call) => {
    // A flush is not waited for: nobody pulls the plug of this disk, and a busy one takes long.
    const real = FLUSHES.has(name) ? () => undefined : (files[name] as (...args: unknown[]) => unknown)
    return (...args: unknown[]) => {
      state.calls += 1
      const errno = state.fails(name)
      if (errno === null) return real(...args)
      state.hit ??= name
      if (name === 'closeSync') real(...args)
      if (name === 'writeSync') {
        const [fd, bytes, , , position] = args as [number, Uint8Array, 0?, number?, number?]
        const half = Math.ceil(bytes.length / 2)
        const written = real(fd, bytes, 0, half, position)
        if (errno === 'short') return written
      }
      throw Object.assign(new Error(`${errno}: planted in ${name}`), { code: errno, syscall: name })
    }
  }
  const reset = (fails: (call: Call) => string | null) => Object.assign(state, { hit: null, calls: 0, fails })

  const calls = Object.fromEntries(names.map((name) => [name, wrap(name)])) as unknown as F
  return {
    ...calls,
    plant: ({ at, errno, onwards = false, only }) => {
      let calls = 0
      reset((name) => {
        if (only === undefined || only === name) calls += 1
        else return null
        return calls === at || (onwards && calls > at) ? errno : null
      })
    },
    plantIn: (call, errno) => reset((name) => (name === call && state.hit === null ? errno : null)),
    plantAtRandom: (chance, rate) =>
      reset(() =>
        chance.between(0, 1) < rate ? (ERRORS[chance.whole(0, ERRORS.length - 1)] ?? null) : null,
      ),
    mend: () => reset(() => null),
    get hit() {
      return state.hit
    },
    get calls() {
      return state.calls
    },
  }
}

const FLUSHES = new Set<unknown>(['fsyncSync', 'fdatasyncSync'])

const ERRORS = ['EIO', 'ENOSPC', 'EROFS', 'ESTALE']

/** Every call that storage makes. */
export const FILE_SYSTEM_CALLS: readonly FileSystemCall[] = [
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
]
