import { expect, test } from 'vitest'
import { inAProgram } from '../hostile/in-a-program.ts'

// A share of what `npm run bench:fuzz` does in full, each time the same.
test('400 journals with damage by chance: found, what is before it as it was, nothing lost, the laws hold', async () => {
  const { tried, faults, outcomes, rss } = await inAProgram('fuzz-journals', 400, 20261130)
  expect(faults).toEqual([])
  expect(tried).toBe(400)
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
