import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  blendForRefill,
  drainAndRefill,
  strengthAfterRefill,
} from '../../../src/trade/coolant/drain-and-refill.ts'
import { readVolume } from '../../../src/trade/quantity.ts'

function litres(typed: string): number {
  const volume = readVolume(typed, { units: 'us' })
  if (!volume.understood) throw new Error(`no volume: ${typed}`)
  return volume.value.litres
}

describe('how much to drain and to replace', () => {
  // The balance of a partial drain, P = [C c - D c + D r] / C, solved for D by hand; shown to three decimals.
  test.each([
    ['10 L', 30, 50, 100, 2.857],
    ['8.5 L', 20, 40, 100, 2.125],
    ['10 L', 60, 50, 0, 1.667],
    ['10 L', 30, 50, 60, 6.667],
    ['12 L', 25, 50, 100, 4],
    ['10 L', 0, 50, 100, 5],
  ])(
    '%s from %d percent to %d percent with %d percent: %d L',
    (capacity, nowPercent, wantedPercent, refillPercent, drained) => {
      const result = drainAndRefill({
        capacityLitres: litres(capacity),
        nowPercent,
        wantedPercent,
        refillPercent,
      })
      expect(result).toEqual({
        code: 'drain-and-refill',
        litres: expect.closeTo(drained, 3),
        isAll: false,
      })
    },
  )

  // 12 quarts from 25 % to 50 % with concentrate: 4 quarts, whichever quart it is.
  test.each(['US', 'imp'])('12 %s quarts: 4 of them', (kind) => {
    const result = drainAndRefill({
      capacityLitres: litres(`12 ${kind} qt`),
      nowPercent: 25,
      wantedPercent: 50,
      refillPercent: 100,
    })
    expect(result).toMatchObject({ litres: expect.closeTo(litres(`4 ${kind} qt`), 10) })
  })

  test('a premix of the wanted strength: all of it has to come out', () => {
    expect(
      drainAndRefill({ capacityLitres: 10, nowPercent: 30, wantedPercent: 50, refillPercent: 50 }),
    ).toEqual({ code: 'drain-and-refill', litres: 10, isAll: true })
  })

  test.each([0, 50, 100])(
    'nothing to do where it is as wanted, whatever goes in (%d percent)',
    (refillPercent) => {
      expect(
        drainAndRefill({ capacityLitres: 10, nowPercent: 50, wantedPercent: 50, refillPercent }),
      ).toEqual({ code: 'nothing-to-do' })
    },
  )

  test.each([
    [30, 50, 40, 'refill-too-weak'],
    [30, 50, 20, 'refill-too-weak'],
    [30, 50, 30, 'refill-too-weak'],
    [60, 50, 55, 'refill-too-strong'],
    [60, 50, 100, 'refill-too-strong'],
  ])(
    'from %d percent to %d percent with %d percent: %s',
    (nowPercent, wantedPercent, refillPercent, code) => {
      expect(drainAndRefill({ capacityLitres: 10, nowPercent, wantedPercent, refillPercent })).toEqual({
        code,
        wantedPercent,
        refillPercent,
      })
    },
  )

  test.each([
    [-1, 50, 100, 'now', -1],
    [30, 101, 100, 'wanted', 101],
    [30, 50, 200, 'refill', 200],
    [Number.NaN, 50, 100, 'now', Number.NaN],
  ])('no percent: from %d to %d with %d', (nowPercent, wantedPercent, refillPercent, which, percent) => {
    expect(drainAndRefill({ capacityLitres: 10, nowPercent, wantedPercent, refillPercent })).toEqual({
      code: 'percent',
      which,
      percent,
    })
  })

  test.each([0, -3, Number.POSITIVE_INFINITY])('no capacity: %d L', (capacityLitres) => {
    expect(drainAndRefill({ capacityLitres, nowPercent: 30, wantedPercent: 50, refillPercent: 100 })).toEqual(
      { code: 'not-positive', which: 'capacity', litres: capacityLitres },
    )
  })

  test('never more than there is, and the glycol in it adds up', () => {
    fc.assert(
      fc.property(capacity, percent, percent, percent, (capacityLitres, now, wanted, refill) => {
        const coolant = {
          capacityLitres,
          nowPercent: now,
          wantedPercent: wanted,
          refillPercent: refill,
        }
        const result = drainAndRefill(coolant)
        const isBetween = (wanted - now) * (refill - wanted) >= 0 && refill !== now
        if (result.code !== 'drain-and-refill') {
          expect(isBetween && wanted !== now).toBe(false)
          return
        }
        expect(result.litres).toBeGreaterThan(0)
        expect(result.litres).toBeLessThanOrEqual(capacityLitres * (1 + 1e-12))
        const glycol = (capacityLitres - result.litres) * now + result.litres * refill
        expect(glycol / capacityLitres).toBeCloseTo(wanted, 6)
      }),
    )
  })
})

describe('what goes in where a known amount came out', () => {
  // By hand: 6 of 10 L at 30 % are out; the 4 L left hold 1.2 L, 5 L are wanted, so 3.8 L of concentrate go in.
  test('6 L out of 10 L at 30 %, wanted 50 %', () => {
    expect(
      blendForRefill({
        capacityLitres: 10,
        drainedLitres: 6,
        nowPercent: 30,
        wantedPercent: 50,
        sourcePercent: 100,
      }),
    ).toEqual({
      code: 'blend',
      sourceLitres: expect.closeTo(3.8, 10),
      waterLitres: expect.closeTo(2.2, 10),
      blendPercent: expect.closeTo(63.333, 3),
    })
  })

  test.each([
    ['all, from concentrate', 2.1, 50, 100, 1.05, 1.05],
    ['all, from a 60 % premix', 6, 40, 60, 4, 2],
    ['all, the premix as it is', 6, 50, 50, 6, 0],
    ['all, water only', 6, 0, 100, 0, 6],
    ['all, water from water', 6, 0, 0, 0, 6],
  ])('%s', (_, volume, wantedPercent, sourcePercent, sourceLitres, waterLitres) => {
    expect(
      blendForRefill({
        capacityLitres: volume,
        drainedLitres: volume,
        nowPercent: 0,
        wantedPercent,
        sourcePercent,
      }),
    ).toMatchObject({
      code: 'blend',
      sourceLitres: expect.closeTo(sourceLitres, 10),
      waterLitres: expect.closeTo(waterLitres, 10),
    })
  })

  // After a flush the block is full of water: 4 L drain of 10 L, so even concentrate brings 40 % only.
  test('too little came out for 50 %, and how much would be enough', () => {
    expect(
      blendForRefill({
        capacityLitres: 10,
        drainedLitres: 4,
        nowPercent: 0,
        wantedPercent: 50,
        sourcePercent: 100,
      }),
    ).toEqual({ code: 'too-little-drained', toward: 'stronger', reachablePercent: 40, neededLitres: 5 })
  })

  test('too little came out to thin it', () => {
    expect(
      blendForRefill({
        capacityLitres: 10,
        drainedLitres: 2,
        nowPercent: 70,
        wantedPercent: 50,
        sourcePercent: 100,
      }),
    ).toEqual({
      code: 'too-little-drained',
      toward: 'weaker',
      reachablePercent: 56,
      neededLitres: expect.closeTo(20 / 7, 10),
    })
  })

  test.each([
    ['stronger', 30, 50, 40],
    ['as it was', 30, 30, 20],
    ['weaker, but not so weak', 60, 50, 30],
  ])('a source that is too weak: wanted %s', (_, nowPercent, wantedPercent, sourcePercent) => {
    expect(
      blendForRefill({ capacityLitres: 10, drainedLitres: 5, nowPercent, wantedPercent, sourcePercent }),
    ).toEqual({ code: 'refill-too-weak', wantedPercent, refillPercent: sourcePercent })
  })

  test('more came out than there is room for', () => {
    const drained = { capacityLitres: 10, drainedLitres: 11, nowPercent: 30 }
    const fault = { code: 'drained-over-capacity', drainedLitres: 11, capacityLitres: 10 }
    expect(blendForRefill({ ...drained, wantedPercent: 50, sourcePercent: 100 })).toEqual(fault)
    expect(strengthAfterRefill({ ...drained, refillPercent: 50 })).toEqual(fault)
  })

  test('nothing came out', () => {
    expect(
      strengthAfterRefill({ capacityLitres: 10, drainedLitres: 0, nowPercent: 30, refillPercent: 50 }),
    ).toEqual({ code: 'not-positive', which: 'drained', litres: 0 })
  })

  test('both together come to what is wanted, or to what is said to be reachable', () => {
    fc.assert(
      fc.property(
        capacity,
        fc.integer({ min: 1, max: 1000 }).map((thousandths) => thousandths / 1000),
        percent,
        percent,
        percent,
        (capacityLitres, share, nowPercent, wantedPercent, sourcePercent) => {
          const drained = { capacityLitres, drainedLitres: share * capacityLitres, nowPercent }
          const result = blendForRefill({ ...drained, wantedPercent, sourcePercent })
          if (result.code === 'blend') {
            expect(result.sourceLitres + result.waterLitres).toBeCloseTo(drained.drainedLitres, 8)
            const refillPercent = (result.sourceLitres * sourcePercent) / drained.drainedLitres
            const after = strengthAfterRefill({ ...drained, refillPercent: Math.min(100, refillPercent) })
            expect(after).toEqual({ code: 'strength', percent: expect.closeTo(wantedPercent, 6) })
          } else if (result.code === 'too-little-drained') {
            const missed = result.reachablePercent - wantedPercent
            expect(Math.sign(missed)).toBe(result.toward === 'stronger' ? -1 : 1)
            expect(result.neededLitres).toBeGreaterThanOrEqual(drained.drainedLitres * (1 - 1e-9))
            expect(result.neededLitres).toBeLessThanOrEqual(capacityLitres * (1 + 1e-9))
          } else expect(result.code).toBe('refill-too-weak')
        },
      ),
    )
  })
})

describe('the strength after a refill', () => {
  test.each([
    [10, 2.857142857, 30, 100, 50],
    [10, 4, 30, 50, 38],
    [10, 10, 30, 50, 50],
    [10, 1, 50, 0, 45],
  ])(
    '%d L, %d L out at %d percent, %d percent in: %d percent',
    (capacityLitres, drainedLitres, nowPercent, refillPercent, percent) => {
      expect(strengthAfterRefill({ capacityLitres, drainedLitres, nowPercent, refillPercent })).toEqual({
        code: 'strength',
        percent: expect.closeTo(percent, 6),
      })
    },
  )
})

const capacity = fc.double({ min: 0.1, max: 100, noNaN: true })
const percent = fc.integer({ min: 0, max: 100 })
