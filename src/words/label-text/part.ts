import type { State } from '../../journal/state.ts'
import { containerPlace } from '../places.ts'

/** Which of how many containers that hold pieces of a step this one is: `1 of 2`; null when it is the only one. */
export function partOf(state: State, no: number, step: number): string | null {
  const holding = new Set<number>()
  for (const { piece, at } of state.ledger.accounts.values()) {
    if (piece.step !== step || piece.kind === 'aid' || piece.kind === 'tool') continue
    for (const place of at.keys()) {
      const inside = containerPlace(place)
      if (inside) holding.add(inside.container)
    }
  }
  const order = [...holding].sort((a, b) => a - b)
  return order.length > 1 && holding.has(no) ? `${order.indexOf(no) + 1} of ${order.length}` : null
}
