import { expect, test } from 'vitest'
import { inAProgram } from '../hostile/in-a-program.ts'

// A share of what `npm run bench:fuzz` does in full, each time the same.
test('200 journals with damage by chance: found, what is before it as it was, nothing lost, the laws hold', async () => {
  const { tried, faults, outcomes, rss } = await inAProgram('fuzz-journals', 200, 20261130)
  expect(faults).toEqual([])
  expect(tried).toBe(200)
  expect(Object.keys(outcomes).sort()).toEqual(
    expect.arrayContaining([
      'goes on, certain',
      'goes on, sound',
      'not-recorded, certain',
      'not-recorded, lossy',
    ]),
  )
  expect(rss).toBeLessThan(512 * 1024 * 1024)
}, 120_000)
