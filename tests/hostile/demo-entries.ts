import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Entry, parseEntry } from '../../src/journal/entry.ts'
import { readLines } from '../../src/storage/journal/line.ts'

const OLDER = 'tests/journal/older'

/** The demo job, as it was kept, at three places: coming off, half built up, and started. */
export function demoEntries(): (readonly Entry[])[] {
  const whole = entriesIn('before-practice.journal')
  const half = whole.findIndex(({ type }) => type === 'fitted')
  return [whole.slice(0, 60), whole.slice(0, half + 40), whole]
}

/** Smaller jobs that were kept, with the kinds of entry that the demo does not have. */
export function smallerJobs(): (readonly Entry[])[] {
  return readdirSync(OLDER)
    .filter((name) => name.startsWith('before-merging-'))
    .map(entriesIn)
}

function entriesIn(name: string): Entry[] {
  const { entries, problem } = readLines(readFileSync(join(OLDER, name)), parseEntry)
  if (problem) throw new Error(`${name}: ${JSON.stringify(problem)}`)
  return entries
}
