import { writeSync } from 'node:fs'
import { demoEntries, smallerJobs } from '../demo-entries.ts'
import { fuzzLines } from '../fuzz-lines.ts'

// So many lines from a seed, told in a program of its own, so that one that never ends can be stopped.
const [count, seed] = process.argv.slice(2).map(Number)
// A closed job takes no lines.
const jobs = [...demoEntries(), ...smallerJobs()].map((entries) =>
  entries.filter(({ type }) => type !== 'closed'),
)
const report = fuzzLines(jobs, count ?? 0, seed ?? 0)
writeSync(1, `${JSON.stringify({ ...report, rss: process.resourceUsage().maxRSS * 1024 })}\n`)
