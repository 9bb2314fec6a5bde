import type { State } from '../journal/state.ts'
import * as lines from '../plan/order-lines.ts'
import type { OrderFacts } from '../plan/waiting-facts.ts'

/** How a line stands on the day of the state's clock; the most urgent word where several are true. */
export function orderStanding({ clock }: State, order: OrderFacts): lines.OrderStanding {
  return lines.orderStanding(order, clock.today)
}

/** How many of it are still to come: those that are wrong, or went back, are not here. */
export function openOf(order: OrderFacts): number {
  return lines.openOf(order)
}
