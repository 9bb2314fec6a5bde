import type { State } from '../../journal/state.ts'
import type { OrderId, OutingId } from '../../plan/waiting/waiting-facts.ts'
import { joined } from '../grammar.ts'
import { countedPiece } from '../pieces.ts'
import { orderedText } from './order-words.ts'
import { holderName } from './out-words.ts'

/** What was ordered: `o3, 8 × head bolts`. */
export function orderName(state: State, id: OrderId): string {
  const line = state.orders.get(id)
  return line ? `${id}, ${orderedText(state, id)}` : id
}

/** What went out and to whom: `b1, cylinder head, at the machine shop`. */
export function outingName(state: State, id: OutingId): string {
  const outing = state.outings.get(id)
  if (!outing) return id
  const pieces = outing.pieces.map(({ piece, count }) => countedPiece(state, piece, count))
  return `${id}, ${joined(pieces)}, ${holderName(outing)}`
}
