import { expect, test } from 'vitest'
import { inAProgram } from './in-a-program.ts'

// A share of what `npm run bench:fuzz` does in full, each time the same.
const SEED = 20261130
const MOST_MEMORY = 512 * 1024 * 1024

test.each([
  { name: 'fuzz-lines', what: 'lines told to the record', count: 3000, kinds: 45 },
  { name: 'fuzz-typed', what: 'lines typed on the screens', count: 60, kinds: 12 },
  { name: 'fuzz-imports', what: 'damaged files from outside', count: 500, kinds: 8 },
])(
  '$count $what: each is answered, and the laws hold',
  async ({ name, count, kinds }) => {
    const { tried, faults, outcomes, rss } = await inAProgram(name, count, SEED)
    expect(faults).toEqual([])
    expect(tried).toBe(count)
    // It came to many answers, and not always to the same refusal.
    expect(Object.keys(outcomes).length).toBeGreaterThan(kinds)
    expect(rss).toBeLessThan(MOST_MEMORY)
  },
  120_000,
)
