import { beforeAll, expect, test } from 'vitest'
import { buildOnce } from './support/putback-terminal.ts'
import { wholeJob } from './support/whole-job.ts'

beforeAll(buildOnce)

test('the whole demo job at 120 by 40 by its numbers, without a colour', async () => {
  const { hands, raw } = await wholeJob('numbers', { columns: 120, rows: 40, env: { NO_COLOR: '1' } })
  expect(hands.withoutLetters).toBeGreaterThan(hands.withLetters)
  // biome-ignore lint/suspicious/noControlCharactersInRegex: colours are control sequences
  expect(raw).not.toMatch(/\x1b\[(?:\d+;)*(?:3\d|4\d|9\d|10\d)(?:;\d+)*m/)
}, 180_000)
