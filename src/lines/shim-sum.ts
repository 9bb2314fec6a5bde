import type { State } from '../journal/state.ts'
import type { ShimAt } from '../plan/facts.ts'
import { shimsAtHome, valvesOnRecord } from '../plan/valves.ts'
import type { SecondWish, ShimStock } from '../trade/shims/assign-shims.ts'
import type { SaidShims } from '../trade/shims/read-shims.ts'
import { shimSizes } from '../trade/shims/shim-sizes.ts'
import type { MeasuredValve } from '../trade/shims/valve.ts'
import { type KnownValve, type Lacking, wholeValves } from '../trade/shims/whole-valves.ts'

/** Which shim is to go where; lengths in millimetres. */
export interface ShimSum {
  sum: 'shims'
  valves: MeasuredValve[]
  stock: ShimStock
  second: SecondWish
  /** As sizes are shown and written. */
  unit: 'mm' | 'in'
  /** The shims that the record knows, by the valve that each was measured with. */
  shims: ShimAt[]
}

/** The sum that was asked for, with what was not said taken from the record; or what neither knows. */
export function shimSum(said: SaidShims, state: State): ShimSum | Lacking {
  const isSaid = said.valves.length > 0
  const measured = valvesOnRecord(state, said.forSale)
  const valves = wholeValves(said, isSaid ? withShimsNow(measured, state, said.forSale) : measured)
  if (!Array.isArray(valves)) return valves
  const { bench, forSale, second, unit } = said
  const shims = isSaid
    ? shimsAtHome(state.ledger)
    : measured.flatMap(({ position, shim }) => (shim === null ? [] : [{ position, piece: shim }]))
  return { sum: 'shims', valves, stock: { bench, forSale }, second, unit, shims }
}

/** Clearances that are said now were measured with the shims that are there now; the limits are those of the record. */
function withShimsNow(
  measured: readonly KnownValve[],
  state: State,
  forSale: readonly number[],
): KnownValve[] {
  const shims = shimsAtHome(state.ledger)
  const sizes = shimSizes(
    shims.map(({ piece }) => state.ledger.accounts.get(piece)?.piece.size),
    forSale,
  )
  const isOne = (position: string) =>
    shims.filter((shim) => shim.position.toLowerCase() === position.toLowerCase()).length === 1
  const wantedAt = (position: string) =>
    measured.find((valve) => valve.position.toLowerCase() === position.toLowerCase())?.wanted ?? null
  const now = shims.map(({ position }, at) => ({
    position,
    clearance: null,
    fitted: isOne(position) ? (sizes[at] ?? null) : null,
    wanted: wantedAt(position),
  }))
  const others = measured.filter(
    ({ position }) => !now.some((valve) => valve.position.toLowerCase() === position.toLowerCase()),
  )
  return [...now, ...others.map((valve) => ({ ...valve, fitted: null }))]
}
