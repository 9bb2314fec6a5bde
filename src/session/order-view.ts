import type { State } from '../journal/state.ts'
import { hereOf, type OrderStanding, openOf, orderStanding } from '../plan/buying/order-lines.ts'
import type { OrderFacts } from '../plan/waiting/waiting-facts.ts'

/** A line that is wanted or ordered, with how it stands. */
export interface OrderView {
  order: OrderFacts
  standing: OrderStanding
  /** How much of it is still to come. */
  open: number
  /** How much of it is in the house, wrong ones too. */
  here: number
}

/** A line on the day of the state's clock. */
export function orderView({ clock }: State, order: OrderFacts): OrderView {
  return { order, standing: orderStanding(order, clock.today), open: openOf(order), here: hereOf(order) }
}
