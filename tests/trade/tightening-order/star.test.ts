import { describe, expect, test } from 'vitest'
import { star, starSource } from '../../../src/trade/tightening-order/star.ts'

const counts = Array.from({ length: 198 }, (_, index) => index + 3)

/** Places as they are published: from 1. */
function published(count: number): string {
  return star(count)
    .map((place) => place + 1)
    .join('-')
}

// ASME PCC-1, legacy cross pattern, bolts numbered clockwise; the lists from memory of its table, 12 and the turns of
// 4 to 24 as drawn in published flange procedures that quote it.
test.each([
  [4, '1-3-2-4'],
  [8, '1-5-3-7-2-6-4-8'],
  [12, '1-7-4-10-2-8-5-11-3-9-6-12'],
  [16, '1-9-5-13-3-11-7-15-2-10-6-14-4-12-8-16'],
  [24, '1-13-7-19-4-16-10-22-2-14-8-20-5-17-11-23-3-15-9-21-6-18-12-24'],
])('%i bolts of a flange, as published', (count, order) => {
  expect(published(count)).toBe(order)
  expect(starSource(count)).toBe('asme-pcc-1')
})

// The same table, from memory only: what the pattern of the other lists gives agrees with it.
test.each([
  [20, '1-11-6-16-3-13-8-18-5-15-10-20-2-12-7-17-4-14-9-19'],
  [32, '1-17-9-25-5-21-13-29-3-19-11-27-7-23-15-31-2-18-10-26-6-22-14-30-4-20-12-28-8-24-16-32'],
])('%i bolts of a flange, worked out from the pattern', (count, order) => {
  expect(published(count)).toBe(order)
  expect(starSource(count)).toBe('after-asme-pcc-1')
})

// The turn written at each bolt, clockwise from the top: how flange drawings show the same patterns.
test.each([
  [8, '1 5 3 7 2 6 4 8'],
  [12, '1 5 9 3 7 11 2 6 10 4 8 12'],
  [16, '1 9 5 13 3 11 7 15 2 10 6 14 4 12 8 16'],
])('the turns as they stand around %i bolts', (count, turns) => {
  const order = star(count)
  expect(order.map((_, place) => order.indexOf(place) + 1).join(' ')).toBe(turns)
})

// Flange procedure API-670210 rev 0, figure 1: the 24-bolt flange, read down its right side and down its left.
test('the drawing of 24 bolts, read down both sides', () => {
  const order = star(24)
  const turnAt = (place: number) => order.indexOf(place) + 1
  expect([0, 1, 2, 3, 4, 5, 6, 7].map(turnAt)).toEqual([1, 9, 17, 5, 13, 21, 3, 11])
  expect([23, 22, 21, 20, 19, 18].map(turnAt)).toEqual([24, 16, 8, 20, 12, 4])
})

// Wheels, common practice: one left out at each step.
test.each([
  [5, '1-3-5-2-4'],
  [7, '1-3-5-7-2-4-6'],
])('%i studs of a wheel', (count, order) => {
  expect(published(count)).toBe(order)
  expect(starSource(count)).toBe('common-practice')
})

describe('every count from 3 to 200', () => {
  test.each(counts)('%i: each place once', (count) => {
    expect(star(count).toSorted((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, place) => place))
  })

  test.each(counts.filter((count) => count > 4))('%i: no two neighbours one after the other', (count) => {
    const order = star(count)
    for (const [turn, place] of order.slice(1).entries()) {
      expect(apart(place, order[turn] ?? -1, count)).toBeGreaterThan(1)
    }
  })

  test.each(counts.filter((count) => count % 2 === 0))(
    '%i: every second step is straight across',
    (count) => {
      const order = star(count)
      for (let turn = 0; turn < count; turn += 2) {
        expect(apart(order[turn] ?? -1, order[turn + 1] ?? -1, count)).toBe(count / 2)
      }
    },
  )

  test.each(counts.filter((count) => count % 4 === 0))('%i: four by four at the quarters', (count) => {
    const order = star(count)
    for (let turn = 0; turn < count; turn += 4) {
      const group = order.slice(turn, turn + 4).map((place) => place % (count / 4))
      expect(new Set(group).size).toBe(1)
    }
  })

  test.each(counts.filter((count) => count % 2 === 1 && count > 7))(
    '%i: as straight across as can be',
    (count) => {
      const order = star(count)
      for (const [turn, place] of order.slice(1).entries()) {
        expect(apart(place, order[turn] ?? -1, count)).toBe((count - 1) / 2)
      }
    },
  )
})

function apart(one: number, other: number, count: number): number {
  const steps = Math.abs(one - other)
  return Math.min(steps, count - steps)
}
