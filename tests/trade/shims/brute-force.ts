import type { ShimStock } from '../../../src/trade/shims/assign-shims.ts'
import { clearanceWith } from '../../../src/trade/shims/needed-shim.ts'
import type { MeasuredValve } from '../../../src/trade/shims/valve.ts'

/** What a plan costs, in the order of what matters. `off`: the sum of squares, in half microns. */
export interface PlanCost {
  none: number
  bought: number
  touched: number
  off: number
}

/** Every way to give each valve a shim of its own, tried out: the costs that are possible. */
export function everyCost(valves: readonly MeasuredValve[], { bench, forSale }: ShimStock): PlanCost[] {
  const onHand = [...valves.map(({ fitted }) => fitted), ...bench]
  let costs: { used: Set<number>; cost: PlanCost }[] = [
    { used: new Set(), cost: { none: 0, bought: 0, touched: 0, off: 0 } },
  ]
  for (const [row, valve] of valves.entries()) {
    const squareOff = (size: number) => {
      const half = Math.round(
        (clearanceWith(valve, size) * 2 - valve.wanted.least - valve.wanted.most) * 1000,
      )
      const range = Math.round((valve.wanted.most - valve.wanted.least) * 1000)
      return Math.abs(half) <= range ? half ** 2 : null
    }
    costs = costs.flatMap(({ used, cost }) => {
      const next = [{ used, cost: { ...cost, none: cost.none + 1 } }]
      for (const [at, size] of onHand.entries()) {
        const off = used.has(at) || valve.clearance <= 0 ? null : squareOff(size)
        if (off === null) continue
        const touched = cost.touched + (at === row ? 0 : 1)
        next.push({ used: new Set([...used, at]), cost: { ...cost, touched, off: cost.off + off } })
      }
      for (const size of valve.clearance > 0 ? forSale : []) {
        const off = squareOff(size)
        if (off === null) continue
        const { bought, touched } = cost
        next.push({ used, cost: { ...cost, bought: bought + 1, touched: touched + 1, off: cost.off + off } })
      }
      return next
    })
  }
  return costs.map(({ cost }) => cost)
}

/** The least of some costs by the criteria in an order. */
export function least(costs: readonly PlanCost[], order: readonly (keyof PlanCost)[]): PlanCost {
  return costs.reduce((best, cost) => {
    const key = order.find((name) => cost[name] !== best[name])
    return key !== undefined && cost[key] < best[key] ? cost : best
  })
}
