import type { Ledger } from '../ledger/account.ts'
import type { PieceId } from '../ledger/piece.ts'
import { shimSizes } from '../trade/shims/shim-sizes.ts'
import type { KnownValve } from '../trade/shims/whole-valves.ts'
import type { PlanFacts, ShimAt } from './facts.ts'

/** A valve whose clearance was measured, and the shim that it was measured with, where the record knows it. */
export interface ValveOnRecord extends KnownValve {
  shim: PieceId | null
}

/** The shims that belong at valves now: matched pieces with the word in their name, not replaced and not left off. */
export function shimsAtHome(ledger: Ledger): ShimAt[] {
  return [...ledger.accounts.values()].flatMap(({ piece, home, should }) =>
    should > 0 && home.position !== undefined && isShim(piece.name)
      ? [{ position: home.position, piece: piece.id }]
      : [],
  )
}

/**
 * What the record knows of each valve: the last clearance measured there with its limits, and the shim fitted then,
 * whatever was decided since. A clearance measured before the shims came off was measured with those that came off.
 */
export function valvesOnRecord({ measures, ledger }: PlanFacts, forSale: readonly number[]): ValveOnRecord[] {
  const valves = new Map<string, Omit<ValveOnRecord, 'fitted'>>()
  for (const { measurement, shims = [] } of measures.values()) {
    if (measurement.kind !== 'valve-clearance') continue
    const { leastMm, mostMm } = measurement.limits ?? {}
    const wanted = leastMm === undefined || mostMm === undefined ? null : { least: leastMm, most: mostMm }
    for (const { at, mm } of measurement.readings) {
      if (at === undefined) continue
      const shim = theOne(shims, at) ?? theOne(cameOff(ledger), at)
      // Later readings of a valve take the place of earlier ones, and their limits where they have any.
      const before = valves.get(key(at))
      valves.set(key(at), {
        position: before?.position ?? at,
        clearance: mm,
        wanted: wanted ?? before?.wanted ?? null,
        shim,
      })
    }
  }
  const found = [...valves.values()]
  const sizes = shimSizes(
    found.map(({ shim }) => (shim === null ? undefined : ledger.accounts.get(shim)?.piece.size)),
    forSale,
  )
  return found.map((valve, at) => ({ ...valve, fitted: sizes[at] ?? null }))
}

/** The one shim at a position; null where there is none, or more than one: two heads with the same positions. */
export function theOne(shims: readonly ShimAt[], position: string): PieceId | null {
  const there = shims.filter((shim) => key(shim.position) === key(position))
  return there.length === 1 ? (there[0]?.piece ?? null) : null
}

function cameOff(ledger: Ledger): ShimAt[] {
  return [...ledger.accounts.values()].flatMap(({ piece }) =>
    piece.home.position !== undefined && piece.replaces === undefined && isShim(piece.name)
      ? [{ position: piece.home.position, piece: piece.id }]
      : [],
  )
}

function isShim(name: string): boolean {
  return /\bshims?\b/i.test(name)
}

function key(position: string): string {
  return position.toLowerCase()
}
