import { beforeAll, expect, test } from 'vitest'
import { buildOnce } from './support/putback-terminal.ts'
import { wholeJob } from './support/whole-job.ts'

beforeAll(buildOnce)

test('the whole demo job at 80 by 24, by scans and Enter: words are for names, notes and figures', async () => {
  const { hands } = await wholeJob('scans', { columns: 80, rows: 24 })
  expect(hands.withoutLetters).toBeGreaterThan(hands.withLetters)
}, 180_000)
