import { linearSumAssignment } from 'linear-sum-assignment'
import type { SecondWish, ShimStock, Taken } from '../../../src/trade/shims/assign-shims.ts'
import { clearanceWith } from '../../../src/trade/shims/needed-shim.ts'
import type { MeasuredValve } from '../../../src/trade/shims/valve.ts'
import type { PlanCost } from './brute-force.ts'

/** What matters, in its order. */
export const orders: Record<SecondWish, (keyof PlanCost)[]> = {
  'fewest-touched': ['none', 'bought', 'touched', 'off'],
  'nearest-middle': ['none', 'bought', 'off', 'touched'],
}

/** What a plan costs, by what it says; throws where it breaks a rule. */
export function costOf(valves: readonly MeasuredValve[], taken: readonly Taken[]): PlanCost {
  const cost: PlanCost = { none: 0, bought: 0, touched: 0, off: 0 }
  for (const [row, valve] of valves.entries()) {
    const size = sizeOf(valves, valve, taken[row])
    if (size === null) {
      cost.none += 1
      continue
    }
    if (taken[row]?.take === 'buy') cost.bought += 1
    if (taken[row]?.take !== 'keep') cost.touched += 1
    cost.off += squareOff(valve, size) ?? Number.NaN
  }
  return cost
}

export function sizeOf(
  valves: readonly MeasuredValve[],
  valve: MeasuredValve,
  taken: Taken | undefined,
): number | null {
  if (taken?.take === 'keep') return valve.fitted
  if (taken?.take === 'valve') {
    return valves.find(({ position }) => position === taken.position)?.fitted ?? Number.NaN
  }
  return taken?.take === 'bench' || taken?.take === 'buy' ? taken.size : null
}

/** Twice the distance from the middle in microns, squared; null out of range. */
function squareOff(valve: MeasuredValve, size: number): number | null {
  const { least, most } = valve.wanted
  const half = Math.round((2 * clearanceWith(valve, size) - least - most) * 1000)
  return Math.abs(half) <= Math.round((most - least) * 1000) && valve.clearance > 0 ? half ** 2 : null
}

/** The least cost, as a second library finds it: another algorithm (Jonker and Volgenant), on costs built in another way. */
export function referenceCost(
  valves: readonly MeasuredValve[],
  { bench, forSale }: ShimStock,
  order: readonly (keyof PlanCost)[],
): PlanCost {
  const sizes = [...valves.map(({ fitted }) => fitted), ...bench]
  const choices = valves.map((valve, row) => {
    const onHand = sizes.map((size, column): PlanCost | null => {
      const off = squareOff(valve, size)
      return off === null ? null : { none: 0, bought: 0, touched: row === column ? 0 : 1, off }
    })
    const offs = forSale.map((size) => squareOff(valve, size)).filter((off) => off !== null)
    const bought = { none: 0, bought: 1, touched: 1, off: Math.min(...offs) }
    const otherwise = offs.length > 0 ? bought : { none: 1, bought: 0, touched: 0, off: 0 }
    return [...onHand, ...valves.map((_, column) => (column === row ? otherwise : null))]
  })
  const cells = choices.flat().filter((cell) => cell !== null)
  const mostOff = Math.max(...cells.map(({ off }) => off))
  const count = valves.length + 1
  const weights = new Map<keyof PlanCost, number>()
  let weight = 1
  for (const name of [...order].reverse()) {
    weights.set(name, weight)
    weight *= name === 'off' ? count * mostOff + 1 : count
  }
  if (weight * count > Number.MAX_SAFE_INTEGER)
    throw new Error('the reference counts in doubles: these costs are too large')
  const costs = choices.map((row) =>
    row.map((cell) => {
      if (cell === null) return weight
      return order.reduce((sum, name) => sum + cell[name] * (weights.get(name) ?? 0), 0)
    }),
  )
  const { rowAssignments } = linearSumAssignment(costs, { maximaze: false })
  const total: PlanCost = { none: 0, bought: 0, touched: 0, off: 0 }
  for (const [row, column] of rowAssignments.entries()) {
    const cell = choices[row]?.[column]
    if (!cell) throw new Error(`the reference gives row ${row} a shim that does not fit`)
    for (const name of order) total[name] += cell[name]
  }
  return total
}
