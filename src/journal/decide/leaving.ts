import type { Move } from '../../ledger/account.ts'
import type { PieceId } from '../../ledger/piece.ts'
import type { NamedPlace, Place } from '../../ledger/place.ts'
import { owedRiders, ridersOf } from '../../plan/riders.ts'
import type { State } from '../state.ts'
import { refuse } from './refuse.ts'

/** Places from which a piece is not meant to come back. */
const GOES_FOR_GOOD: ReadonlySet<Place> = new Set<NamedPlace>(['scrap', 'spare', 'supplier', 'lost'])

/**
 * Before a piece leaves for good: the old one stays until the new one was held beside it, unless a reason is given, and
 * nothing that is still owed may leave on it.
 */
export function refuseTooEarly(state: State, piece: PieceId, to: Place, reason: string | undefined): void {
  if (!GOES_FOR_GOOD.has(to) || to === 'lost') return
  const fresh = [...state.comparisons.values()].find(
    ({ piece: id, old, verdict }) =>
      old === piece && verdict !== 'right' && (state.ledger.accounts.get(id)?.should ?? 0) > 0,
  )
  if (fresh && !reason?.trim()) refuse({ code: 'not-compared', piece, fresh: fresh.piece })
  refuseOwedRiders(state, piece)
}

/** Nothing that is still owed leaves with what it sits on. */
export function refuseOwedRiders(state: State, piece: PieceId): void {
  const riders = owedRiders(state, piece)
  if (riders.length > 0) refuse({ code: 'carries-owed', piece, riders })
}

/** What sits on a piece that leaves for good leaves with it, as soon as none of that piece stays. */
export function riderMoves(state: State, piece: PieceId, to: Place, leaving: number): Move[] {
  if (!GOES_FOR_GOOD.has(to)) return []
  const had = [...(state.ledger.accounts.get(piece)?.at ?? [])]
    .filter(([place]) => !GOES_FOR_GOOD.has(place))
    .reduce((sum, [, count]) => sum + count, 0)
  if (leaving < had) return []
  return ridersOf(state.ledger, piece).map(
    (rider): Move => ({ piece: rider.piece, count: rider.count, from: rider.on, to }),
  )
}
