import type { State } from '../journal/state.ts'
import { type ShimLines, shimLines } from '../lines/shim-lines.ts'
import type { ShimSum } from '../lines/shim-sum.ts'
import { type OddSize, oddSizes } from '../trade/shims/odd-sizes.ts'
import { planShims, type ShimPlan } from '../trade/shims/shim-plan.ts'

/** Which shim goes where, and the lines that carry it out in the record. */
export interface WorkedShims {
  plan: ShimPlan
  /** Shims that are not of a size that is for sale. */
  odd: OddSize[]
  carryOut: ShimLines
}

/** Works out which shim goes where; the record is only looked at, for the lines. */
export function workOutShims(state: State, sum: ShimSum): WorkedShims {
  const { valves, stock, second } = sum
  const plan = planShims(valves, stock, second)
  return {
    plan,
    odd: oddSizes(valves, stock.bench, stock.forSale),
    carryOut: shimLines(state, plan, sum),
  }
}
