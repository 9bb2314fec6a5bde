import { writeSync } from 'node:fs'
import { demoEntries } from '../demo-entries.ts'
import { fuzzTyped } from '../fuzz-typed.ts'

// So many lines from a seed, typed on the screens over the half-built demo.
const [count, seed] = process.argv.slice(2).map(Number)
const report = fuzzTyped(demoEntries()[1] ?? [], count ?? 0, seed ?? 0)
writeSync(1, `${JSON.stringify({ ...report, rss: process.resourceUsage().maxRSS * 1024 })}\n`)
