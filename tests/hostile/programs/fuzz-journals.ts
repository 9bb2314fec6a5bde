import { writeSync } from 'node:fs'
import { fuzzJournals } from '../fuzz-journals.ts'

// So many damaged journals from a seed, in a program of its own, so that one that is never read to its end can be stopped.
const [count, seed] = process.argv.slice(2).map(Number)
const report = fuzzJournals(count ?? 0, seed ?? 0)
writeSync(1, `${JSON.stringify({ ...report, rss: process.resourceUsage().maxRSS * 1024 })}\n`)
