import type { Entry, EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import { hereOf, type OrderStanding, openOf, orderStanding } from '../../plan/buying/order-lines.ts'
import type { OrderFacts, OrderId } from '../../plan/waiting/waiting-facts.ts'

/** One line that was wanted or ordered, how it stands, and the entries that made it so. */
export interface OrderRecord {
  order: OrderFacts
  standing: OrderStanding
  open: number
  here: number
  entries: EntryOf<'order-lined' | 'order-changed' | 'order-returned' | 'supplied'>[]
}

/** Every order line, in its order. */
export function ordersOf(state: State, entries: readonly Entry[]): OrderRecord[] {
  return [...state.orders.values()].map((order) => ({
    order,
    standing: orderStanding(order, state.clock.today),
    open: openOf(order),
    here: hereOf(order),
    entries: entries.filter((entry): entry is OrderRecord['entries'][number] => concerns(entry, order.id)),
  }))
}

function concerns(entry: Entry, id: OrderId): boolean {
  if (entry.type === 'order-lined') return entry.orders.some((line) => line.id === id)
  if (entry.type === 'order-changed' || entry.type === 'order-returned') return entry.order === id
  return entry.type === 'supplied' && entry.order?.id === id
}
