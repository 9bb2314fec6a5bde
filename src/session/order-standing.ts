import type { State } from '../journal/state.ts'
import type { OrderFacts } from '../plan/waiting-facts.ts'

/** How a line that is wanted or ordered stands. `late`: the day on which it was due is over. */
export type OrderStanding = 'wanted' | 'ordered' | 'late' | 'partly' | 'wrong' | 'arrived' | 'cancelled'

/** How a line stands on the day of the state's clock; the most urgent word where several are true. */
export function orderStanding({ clock }: State, order: OrderFacts): OrderStanding {
  if (order.cancelled !== null) return 'cancelled'
  if (order.wrong > 0) return 'wrong'
  if (openOf(order) === 0) return 'arrived'
  if (order.ordered && order.due !== undefined && order.due < clock.today) return 'late'
  if (order.arrived > order.returned) return 'partly'
  return order.ordered ? 'ordered' : 'wanted'
}

/** How many of it are still to come. */
export function openOf({ count, arrived, returned, cancelled }: OrderFacts): number {
  return cancelled === null ? Math.max(0, count - arrived + returned) : 0
}
