import { placesOf } from '../ledger/ledger.ts'
import type { PieceId } from '../ledger/piece.ts'
import { containerOf } from '../ledger/place.ts'
import { entriesInForce } from './in-force.ts'
import type { Session } from './session.ts'

/** Something that came into the house and is not on the machine yet. */
export interface Arrived {
  piece: PieceId
  count: number
}

/** What arrived from a supplier, or came back from where it was sent, and waits to be fitted; the newest first, at most `most`. */
export function arrivedView(session: Session, most: number): Arrived[] {
  const { state } = session
  const found = new Map<PieceId, number>()
  for (const entry of entriesInForce(session).reverse()) {
    if (found.size >= most) break
    const isArrival =
      entry.type === 'came-back' || (entry.type === 'supplied' && (entry.order || entry.kit) !== undefined)
    if (!isArrival) continue
    for (const { piece, count } of entry.moves) {
      const came = Math.min((found.get(piece) ?? 0) + count, waiting(state, piece))
      if (came > 0) found.set(piece, came)
    }
  }
  return [...found].slice(0, most).map(([piece, count]) => ({ piece, count }))
}

/** How many lie within reach: on the bench or in a container. */
function waiting({ ledger }: Session['state'], piece: PieceId): number {
  const within = placesOf(ledger, piece).filter(
    ({ place }) => place === 'bench' || containerOf(place) !== null,
  )
  return within.reduce((sum, { count }) => sum + count, 0)
}
