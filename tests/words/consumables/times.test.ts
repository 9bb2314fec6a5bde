import { describe, expect, test } from 'vitest'
import { leftText } from '../../../src/words/consumables/times.ts'

const run = { from: '2030-01-01T08:00:00.400Z', until: '2030-01-01T08:10:00.400Z' }

describe('how long is left', () => {
  test.each([
    // Asked to the second, in the very second in which it was put on.
    ['2030-01-01T08:00:00.000Z', '10 min to go'],
    ['2030-01-01T08:00:01.000Z', '10 min to go'],
    ['2030-01-01T08:04:30.000Z', '6 min to go'],
    ['2030-01-01T09:00:00.000Z', '0 min to go'],
  ])('at %s: %s', (now, says) => {
    expect(leftText(now, run)).toBe(says)
  })

  test('and that the clock stands wrong, where it shows a time before that second', () => {
    expect(leftText('2030-01-01T07:59:59.000Z', run)).toContain('clock stands before')
  })
})
