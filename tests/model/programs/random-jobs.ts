import { randomJobs } from '../random-jobs.ts'

// So many random commands from a seed, in a program of its own, so that every core has one; says what they came to.
const [seed = 0, commands = 0, strip = 0, patience = 0] = process.argv.slice(2).map(Number)
process.stdout.write(`${JSON.stringify(randomJobs(seed, commands, { strip, patience }))}\n`)
