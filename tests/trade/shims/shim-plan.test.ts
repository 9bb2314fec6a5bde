import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { planShims } from '../../../src/trade/shims/shim-plan.ts'
import { anyEngine, steps, wornEngine } from './engines.ts'

const at = (position: string, fitted: number, clearance: number, least: number, most: number) => ({
  position,
  fitted,
  clearance,
  wanted: { least, most },
})

describe('the plan', () => {
  // An invented twin: eight valves, two out of range.
  const twin = [
    at('I1', 2.45, 0.14, 0.13, 0.17),
    at('I2', 2.4, 0.15, 0.13, 0.17),
    at('I3', 2.45, 0.15, 0.13, 0.17),
    at('I4', 2.45, 0.14, 0.13, 0.17),
    at('E1', 2.5, 0.26, 0.22, 0.28),
    at('E2', 2.5, 0.21, 0.22, 0.28),
    at('E3', 2.5, 0.31, 0.22, 0.28),
    at('E4', 2.475, 0.28, 0.22, 0.28),
  ]

  test('a swap and one to buy', () => {
    const plan = planShims(twin, { bench: [], forSale: steps(2.3, 3, 0.025) })
    expect(plan.work).toEqual([
      { work: 'exchange', positions: ['E2', 'E4'] },
      { work: 'pass-on', positions: ['E3'], last: { take: 'buy', size: 2.55 } },
    ])
    expect(plan.buy).toEqual([{ size: 2.55, count: 1 }])
    expect(plan.over).toEqual([{ from: 'E3', size: 2.5 }])
    expect(
      plan.valves.map(({ position, isWithin, size, willBe }) => [position, isWithin, size, willBe]),
    ).toEqual([
      ['I1', true, 2.45, 0.14],
      ['I2', true, 2.4, 0.15],
      ['I3', true, 2.45, 0.15],
      ['I4', true, 2.45, 0.14],
      ['E1', true, 2.5, 0.26],
      ['E2', false, 2.475, 0.235],
      ['E3', false, 2.55, 0.26],
      ['E4', true, 2.5, 0.255],
    ])
  })

  test('a circle of three is one piece of work', () => {
    const valves = [
      at('A', 2.4, 0.2, 0.08, 0.12),
      at('B', 2.5, 0.2, 0.08, 0.12),
      at('C', 2.6, 0.05, 0.2, 0.3),
    ]
    const plan = planShims(valves, { bench: [], forSale: [] })
    expect(plan.work).toEqual([{ work: 'exchange', positions: ['A', 'B', 'C'] }])
    expect(plan.over).toEqual([])
  })

  test('a chain ends with the one from the bench, and with none where there is none', () => {
    const valves = [at('A', 2.4, 0.2, 0.08, 0.12), at('B', 2.5, 0.2, 0.08, 0.12)]
    expect(planShims(valves, { bench: [2.6, 2.3], forSale: [] })).toMatchObject({
      work: [{ work: 'pass-on', positions: ['A', 'B'], last: { take: 'bench', size: 2.6 } }],
      over: [
        { from: 'A', size: 2.4 },
        { from: null, size: 2.3 },
      ],
    })
    const plan = planShims(valves, { bench: [], forSale: [2.5] })
    expect(plan.work).toEqual([{ work: 'pass-on', positions: ['A', 'B'], last: { take: 'none' } }])
    expect(plan.valves[1]?.why).toEqual({ code: 'above', nearest: { size: 2.5, clearance: 0.2 } })
  })

  test('a valve that lacks a shim keeps its own until there is one', () => {
    const plan = planShims([at('A', 2.4, 0.2, 0.08, 0.12)], { bench: [], forSale: [] })
    expect(plan).toMatchObject({ work: [], over: [], buy: [] })
    expect(plan.valves[0]).toMatchObject({ size: null, willBe: null, why: { code: 'above' } })
  })
})

describe('every plan', () => {
  test('uses each shim once, brings every valve that gets one within its range, and can be carried out in its order', () => {
    fc.assert(fc.property(anyEngine({ maxLength: 20 }), carryOut), { numRuns: 300 })
    for (const seed of [5, 6]) carryOut(wornEngine(200, seed))
  })
})

function carryOut({ valves, stock }: ReturnType<typeof wornEngine>): void {
  const plan = planShims(valves, stock)
  const wanted = new Map(plan.valves.map((valve) => [valve.position, valve]))
  for (const { willBe, wanted, why } of plan.valves) {
    expect(why === null).toBe(willBe !== null)
    if (willBe === null) continue
    expect(willBe).toBeGreaterThanOrEqual(wanted.least)
    expect(willBe).toBeLessThanOrEqual(wanted.most)
  }
  // Done by hand: what is in each valve, on the bench and bought.
  const inValve = new Map<string, number | null>(valves.map(({ position, fitted }) => [position, fitted]))
  const bench = [...stock.bench]
  const bought = plan.buy.flatMap(({ size, count }) => Array.from({ length: count }, () => size))
  const takeFrom = (pile: number[], size: number) => {
    expect(pile).toContain(size)
    return pile.splice(pile.indexOf(size), 1)[0] ?? Number.NaN
  }
  const out: number[] = []
  for (const work of plan.work) {
    const [first = ''] = work.positions
    const inHand = inValve.get(first) ?? Number.NaN
    inValve.set(first, null)
    for (const [no, position] of work.positions.entries()) {
      const next = work.positions[no + 1]
      expect(inValve.get(position)).toBeNull()
      if (next !== undefined) {
        inValve.set(position, inValve.get(next) ?? Number.NaN)
        inValve.set(next, null)
      } else if (work.work === 'exchange') inValve.set(position, inHand)
      else if (work.last.take === 'bench') inValve.set(position, takeFrom(bench, work.last.size))
      else if (work.last.take === 'buy') inValve.set(position, takeFrom(bought, work.last.size))
    }
    if (work.work === 'pass-on') out.push(inHand)
  }
  for (const [position, size] of inValve) {
    const planned = wanted.get(position)
    const stays = plan.work.some(({ positions }) => positions.includes(position)) ? null : planned?.fitted
    expect(size).toBe(planned?.size ?? stays)
  }
  expect(bought).toEqual([])
  const sorted = (sizes: number[]) => [...sizes].sort((a, b) => a - b)
  expect(sorted(plan.over.map(({ size }) => size))).toEqual(sorted([...bench, ...out]))
}
