import { expect, test } from 'vitest'
import { demoHome, pressAtRandom } from './support/random-keys.ts'

/** So many times this many keys, each time on a demo job of its own, for a record of any length slows all of it. */
const RUNS = 6
const KEYS = 5_000

test('30,000 keys by chance, while the demo goes back together', { timeout: 180_000 }, async () => {
  const home = demoHome(false)
  const screens = new Set<string>()
  for (let run = 0; run < RUNS; run += 1) {
    const seen = await pressAtRandom(home, { seed: 1 + run, keys: KEYS })
    expect(seen.keys).toBeGreaterThanOrEqual(KEYS)
    expect(seen.frames).toBeGreaterThanOrEqual(KEYS / 20)
    for (const screen of seen.screens) screens.add(screen)
  }
  // Chance came round.
  expect(screens.size).toBeGreaterThan(20)
})
