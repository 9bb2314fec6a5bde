import { breakOff } from '../broken-off/break-off.ts'

// Whole jobs from a seed, broken off so many times in all, in a program of its own; says what came of it.
const [seed = 0, interruptions = 0] = process.argv.slice(2).map(Number)
process.stdout.write(`${JSON.stringify(breakOff(seed, interruptions))}\n`)
