import { writeSync } from 'node:fs'
import { fuzzImports } from '../fuzz-imports.ts'

// So many files from a seed, read in a program of its own, so that one that is never read to its end can be stopped.
const [count, seed] = process.argv.slice(2).map(Number)
const report = await fuzzImports(count ?? 0, seed ?? 0)
writeSync(1, `${JSON.stringify({ ...report, rss: process.resourceUsage().maxRSS * 1024 })}\n`)
