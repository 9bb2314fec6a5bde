import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import { carrierOf } from '../ledger/place.ts'
import { openOf, ordersFor } from '../plan/buying/order-lines.ts'
import type { Gates } from '../plan/gates.ts'
import type { Reason } from '../plan/reasons.ts'
import { outingsWith } from '../plan/waiting/outings.ts'
import type { OrderId, OutingId } from '../plan/waiting/waiting-facts.ts'

/** A piece that a step lacks, and what it is to come by: an outing, an order line, or nothing yet. */
export interface Wait {
  piece: PieceId
  by: OutingId | OrderId | null
  /** A day: `2026-12-04`; none where nobody said one. */
  due?: string | undefined
  /** The day is over. */
  isLate: boolean
}

/** What of a step is not here, each piece once. */
export function waitsOf(state: State, gates: Gates, step: number): Wait[] {
  const lacking = new Set(gates.start(step).flatMap(lackingPiece))
  return [...lacking].map((piece) => {
    const { by, due } = comingBy(state, piece)
    return { piece, by, due, isLate: due !== undefined && due < state.clock.today }
  })
}

/** A piece that no hand at the bench can put right: it, or another in its place, has to come from somewhere. */
function lackingPiece(reason: Reason): PieceId[] {
  switch (reason.code) {
    case 'piece-away':
    case 'piece-short':
    case 'piece-used':
    case 'compare-wrong':
      return [reason.piece]
    case 'piece-judged':
      // Cleaning is done here.
      return reason.verdict === 'clean' ? [] : [reason.piece]
    default:
      return []
  }
}

/** What a piece, or one in its place, is to come by: the outing that took it, or a line of an order; the later of two. */
export function comingBy(state: State, piece: PieceId): Pick<Wait, 'by' | 'due'> {
  const carriers = [...(state.ledger.accounts.get(piece)?.at.keys() ?? [])].flatMap(
    (place) => carrierOf(place) ?? [],
  )
  // What sits on another piece comes with that.
  const outings = [piece, ...carriers].flatMap((each) => outingsWith(state, each))
  const orders = ordersFor(state, piece).filter((order) => openOf(order) > 0)
  const ways = [...outings, ...orders.filter(({ ordered }) => ordered)]
  const last = ways.sort((a, b) => ((a.due ?? '') < (b.due ?? '') ? -1 : 1)).at(-1)
  return { by: last?.id ?? null, due: last?.due }
}
