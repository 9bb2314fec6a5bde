import { writeSync } from 'node:fs'
import { withLock } from '../../../src/storage/lock/lock.ts'

// Takes the lock, says so, and keeps it until it is killed.
withLock(process.argv[2] ?? '', {}, () => {
  writeSync(1, 'held\n')
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0)
})
