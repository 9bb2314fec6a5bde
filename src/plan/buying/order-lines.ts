import type { PieceId } from '../../ledger/piece.ts'
import type { PlanFacts } from '../facts.ts'
import { heirs } from '../succession.ts'
import type { OrderFacts, PartNotes } from '../waiting/waiting-facts.ts'

/** How a line that is wanted or ordered stands. `late`: the day on which it was due is over. */
export type OrderStanding =
  | 'wanted'
  | 'ordered'
  | 'late'
  | 'partly'
  | 'wrong'
  | 'returned'
  | 'arrived'
  | 'cancelled'

/** How a line stands on a day, as `2026-12-04`; the most urgent word where several are true. */
export function orderStanding(order: OrderFacts, today: string): OrderStanding {
  if (order.cancelled !== null) return 'cancelled'
  if (order.wrong > 0) return 'wrong'
  if (openOf(order) === 0) return 'arrived'
  if (!order.ordered) return 'wanted'
  if (isLate(order, today)) return 'late'
  if (order.returned > 0) return 'returned'
  return order.arrived > 0 ? 'partly' : 'ordered'
}

/** How much of a line is still to come: what is wrong, or went back, is not here. 0 where the rest was cancelled. */
export function openOf({ count, arrived, wrong, returned, cancelled }: OrderFacts): number {
  return cancelled === null ? withoutNoise(Math.max(0, count - (arrived - wrong - returned))) : 0
}

/** How much of a line is in the house, wrong ones too. */
export function hereOf({ arrived, returned }: OrderFacts): number {
  return withoutNoise(arrived - returned)
}

/** Whether it was ordered, some of it is still to come, and the day is over. */
export function isLate(order: OrderFacts, today: string): boolean {
  return order.ordered && order.due !== undefined && order.due < today && openOf(order) > 0
}

/** The lines that are for the home that a piece has now, or had, oldest first. */
export function ordersFor(facts: PlanFacts, piece: PieceId): OrderFacts[] {
  const heirOf = heirs(facts)
  const heir = heirOf(piece)
  return [...facts.orders.values()].filter(
    (order) => order.piece !== undefined && heirOf(order.piece) === heir,
  )
}

/** What the user knows about buying a piece: its own notes, and else those of the pieces that had its home before. */
export function partNotesOf(facts: PlanFacts, piece: PieceId): PartNotes {
  const notes: PartNotes = {}
  let each: PieceId | undefined = piece
  while (each !== undefined) {
    const { partNo, price, source } = facts.partNotes.get(each) ?? {}
    notes.partNo ??= partNo
    notes.price ??= price
    notes.source ??= source
    each = facts.ledger.accounts.get(each)?.piece.replaces
  }
  return notes
}

/** Litres are added and taken away as decimals. */
function withoutNoise(amount: number): number {
  return Number(amount.toFixed(6))
}
