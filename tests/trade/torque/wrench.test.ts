import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { leastUsableNm, settingFor, wrenchRangeFault } from '../../../src/trade/torque/wrench.ts'

function setting(torque: number, handleMm: number, adapterMm: number, angleDegrees = 0): number {
  const result = settingFor(torque, { handleMm, adapterMm, angleDegrees })
  if (!result.isPossible) throw new Error(result.code)
  return result.settingNm
}

describe('the setting for an adapter', () => {
  // Any unit of torque and of length will do, as long as both lengths are in the same one.
  test.each([
    ['NAVEDTRA 14315, figures 3-44 and 3-45', 100, 12, 6, 66.7, 0.05],
    ['TM 1-1500-204-23-9, figure 8-16', 300, 10, 4, 214, 0.5],
    ['TM 5-3805-274-13&P', 19, 22, 3, 17, 0.5],
    // It divides by 1.14, rounded, and prints 23.0 for 22.7.
    ['TM 5-3805-274-13&P', 25.8, 55.9, 7.6, 23, 0.5],
    ['the same, without the rounding in between', 25.8, 55.9, 7.6, 22.71, 0.005],
    ['the same, 19 lb-ft to one place more', 19, 22, 3, 16.72, 0.005],
    ['a helicopter maintenance manual, standard practices 20.4', 135, 10, 1.5, 117.39, 0.005],
    ['a light aircraft manual, figure 2-14', 30, 1, 0.25, 24, 0.005],
    ['a tool manual', 50, 16, 2, 44.44, 0.005],
  ])('%s: %d, handle %d, adapter %d: %d', (_, torque, handle, adapter, published, tolerance) => {
    expect(Math.abs(setting(torque, handle, adapter) - published)).toBeLessThanOrEqual(tolerance)
  })

  // From the levers about the fastener.
  test.each([
    ['square to the wrench it changes nothing', 90, 40],
    ['pointing back, the lever is 400 - 50', 180, (40 * 400) / 350],
    ['at 60 degrees half of it counts', 60, (40 * 400) / 425],
    ['the other way round it is the same', -60, (40 * 400) / 425],
  ])('%s', (_, angle, expected) => expect(setting(40, 400, 50, angle)).toBeCloseTo(expected, 9))

  test('a socket extension along the drive axis changes nothing', () => {
    expect(setting(40, 400, 0)).toBe(40)
  })

  test.each([
    [0, 50, 0, 'handle-length'],
    [-400, 50, 0, 'handle-length'],
    [Number.NaN, 50, 0, 'handle-length'],
    [400, -1, 0, 'adapter-length'],
    [400, 400, 180, 'no-lever'],
    [400, 900, 150, 'no-lever'],
    [400, 50, Number.NaN, 'no-lever'],
  ])('handle %d, adapter %d at %d degrees: %s', (handleMm, adapterMm, angleDegrees, code) => {
    expect(settingFor(40, { handleMm, adapterMm, angleDegrees })).toEqual({ isPossible: false, code })
  })

  test('the hand on the setting makes the torque at the fastener: the same force, on its own lever', () => {
    const length = fc.double({ min: 10, max: 1000, noNaN: true })
    fc.assert(
      fc.property(length, length, fc.double({ min: -89, max: 89, noNaN: true }), (handle, adapter, angle) => {
        const force = (setting(40, handle, adapter, angle) * 1000) / handle
        // The lever from the fastener, by coordinates and not by the formula.
        const radians = (angle * Math.PI) / 180
        const hand = { x: handle, y: 0 }
        const fastener = { x: -adapter * Math.cos(radians), y: adapter * Math.sin(radians) }
        // The force is square to the wrench, so only the distance along the wrench counts.
        expect((force * (hand.x - fastener.x)) / 1000).toBeCloseTo(40, 6)
      }),
    )
  })
})

describe('the range of a wrench', () => {
  test.each([
    [22, 20, 100, null],
    [20, 20, 100, null],
    [100, 20, 100, null],
    [(100 * 450) / 400 / 1.125, 20, 100, null],
    [100.1, 20, 100, 'above-range'],
    [19.9, 20, 100, 'below-range'],
    [15, 5, 100, 'lowest-fifth'],
    [20, 5, 100, null],
    [22, 100, 20, 'range-empty'],
    [22, 20, 20, 'range-empty'],
    [22, -20, 100, 'range-empty'],
    [22, Number.NaN, 100, 'range-empty'],
  ])('%d N·m on a wrench of %d to %d: %s', (torque, leastNm, mostNm, code) => {
    expect(wrenchRangeFault(torque, { leastNm, mostNm })).toBe(code)
  })

  test.each([
    [5, 100, 20],
    [40, 200, 40],
    [60, 200, 60],
  ])('a wrench of %d to %d N·m is of use from %d', (leastNm, mostNm, least) => {
    expect(leastUsableNm({ leastNm, mostNm })).toBeCloseTo(least, 9)
    expect(wrenchRangeFault(least, { leastNm, mostNm })).toBeNull()
  })
})
