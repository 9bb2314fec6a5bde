import { basename } from 'node:path'
import { type FileSystem, nodeFileSystem } from '../../../src/storage/files/file-system.ts'
import { FILE_SYSTEM_CALLS, type FileSystemCall } from './faulty-file-system.ts'

/**
 * The real file system, until the process dies in the call that is named: `fdatasyncSync journal.log`, and `in place` behind
 * it for a write over what is there. It dies before the call is done, in a write after half of the bytes. `says` hears of it right before.
 */
export function dyingFileSystem(diesIn: string, says: (line: string) => void): FileSystem {
  const open = new Map<number, string>()
  const wrap = (name: FileSystemCall) => {
    const real = nodeFileSystem[name] as (...args: unknown[]) => unknown
    return (...args: unknown[]) => {
      const [first, bytes, , , position] = args as [string | number, Uint8Array, 0?, number?, number?]
      const file = typeof first === 'number' ? (open.get(first) ?? '') : basename(first)
      const how = name === 'writeSync' && position !== undefined ? ' in place' : ''
      if (`${name} ${file}${how}` === diesIn) {
        says(`dies in ${diesIn}`)
        if (name === 'writeSync') real(first, bytes, 0, bytes.length >> 1, position)
        die()
      }
      const result = real(...args)
      if (name === 'openSync') open.set(result as number, file)
      return result
    }
  }
  return Object.fromEntries(FILE_SYSTEM_CALLS.map((name) => [name, wrap(name)])) as unknown as FileSystem
}

function die(): void {
  process.kill(process.pid, 'SIGKILL')
  // The signal may take a moment; nothing more is done until it is there.
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0)
}
