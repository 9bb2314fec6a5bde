import { writeSync } from 'node:fs'
import { enterJob } from '../../../src/storage/lock/presence.ts'

// Enters a job, says so, and stays until it is killed.
enterJob(process.argv[2] ?? '')
writeSync(1, 'here\n')
Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0)
