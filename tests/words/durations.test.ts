import fc from 'fast-check'
import { expect, test } from 'vitest'
import { durationText } from '../../src/trade/calendar/duration-said.ts'
import { durationWords } from '../../src/words/durations.ts'

test.each([
  [0, '0 min'],
  [18, '18 min'],
  [65, '1 h 5 min'],
  [1440, '24 h'],
  [2880, '2 days'],
  [3120, '2 days 4 h'],
])('%i minutes: %s', (minutes, says) => expect(durationWords(minutes)).toBe(says))

test('they are the words of the trade', () =>
  fc.assert(
    fc.property(fc.nat(600_000), (minutes) => {
      expect(durationWords(minutes)).toBe(durationText(minutes))
    }),
    { numRuns: 300, seed: 12 },
  ))
