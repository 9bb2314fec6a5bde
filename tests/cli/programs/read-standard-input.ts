import { writeSync } from 'node:fs'
import { readRunFile } from '../../../src/cli/read-run-file.ts'

// Says that it begins, and then how long its standard input is, which does not wait for its writer once it was looked at.
process.stdin.on('error', () => undefined)
writeSync(1, 'begun\n')
writeSync(1, `${readRunFile(null).length}\n`)
