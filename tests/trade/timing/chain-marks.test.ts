import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { turnsUntilMarksMeet } from '../../../src/trade/timing/chain-marks.ts'

describe('after how many turns of the crank the marked links meet the marks again', () => {
  // By hand: 126 = 2 x 63 pins and 48 = 16 x 3 teeth come round together after 1008 = 42 x 24 teeth.
  test.each([
    [24, 126, 42],
    [24, 96, 4],
    [24, 48, 2],
    [18, 114, 38],
    [20, 121, 242],
  ])('%d crank teeth, %d pins: %d turns', (driver, pins, turns) => {
    expect(turnsUntilMarksMeet({ driver, driven: 2 * driver }, pins)).toBe(turns)
  })

  test('as when the crank is turned until they do', () => {
    fc.assert(
      fc.property(fc.integer({ min: 6, max: 40 }), fc.integer({ min: 30, max: 200 }), (driver, pins) => {
        let turns = 1
        while ((turns * driver) % pins !== 0 || (turns * driver) % (2 * driver) !== 0) turns++
        expect(turnsUntilMarksMeet({ driver, driven: 2 * driver }, pins)).toBe(turns)
      }),
    )
  })
})
