import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { quarterMarks, readTurn } from '../../../src/trade/tightening-passes/turn.ts'

describe('how far is turned', () => {
  test.each([
    ['90 deg', 90],
    ['90°', 90],
    ['22,5 degrees', 22.5],
    ['1/4 turn', 90],
    ['1/6 of a turn', 60],
    ['a marked sixth of a turn', 60],
    ['an eighth turn', 45],
    ['a turn', 360],
    ['2 turns', 720],
    // A hexagon has six flats, a bi-hexagon twelve points: geometry.
    ['a flat', 60],
    ['2 flats', 120],
    ['1 point', 30],
    ['-90 deg', -90],
  ])('%s', (text, degrees) => {
    expect(readTurn(text)).toBe(degrees)
  })

  test.each(['', '90', 'deg', 'turn', '90 Nm', 'ninety deg', 'a turn too many', '1/0 turn'])(
    '%j is none',
    (text) => {
      expect(readTurn(text)).toBeUndefined()
    },
  )
})

describe('quarter turns to mark', () => {
  test.each([
    [90, 1, 0],
    [135, 1, 45],
    [60, 0, 60],
    // TM 10-3930-669-20, appendix E: 165 degrees in all.
    [165, 1, 75],
    [270, 3, 0],
    [112.5, 1, 22.5],
  ])('%d degrees', (degrees, quarters, rest) => {
    expect(quarterMarks(degrees)).toEqual({ quarters, rest })
  })

  test('add up again, with less than a quarter left', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 7200 }), (tenths) => {
        const { quarters, rest } = quarterMarks(tenths / 10)
        expect(quarters * 90 + rest).toBeCloseTo(tenths / 10, 6)
        expect(rest >= 0 && rest < 90).toBe(true)
      }),
    )
  })
})
