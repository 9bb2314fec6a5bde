import type { State } from '../journal/state.ts'
import { type ShoppingLine, shopping } from '../plan/buying/shopping.ts'
import type { OrderFacts, PartNotes } from '../plan/waiting/waiting-facts.ts'
import { minorDigits } from '../trade/currency.ts'
import { type Price, priceText } from '../trade/price.ts'
import { priceOfAll, totalsByCurrency } from '../trade/price-total.ts'
import { blockedByOrder } from './blocked-by-order.ts'
import { type OrderView, orderView } from './order-view.ts'

/** What to buy, how what was ordered stands, and what both come to. */
export interface ShoppingView {
  /** Numbered from 1 for `buy`. */
  lines: (ShoppingLine & { price?: PartNotes['price'] })[]
  /** Every line that was ever wanted or ordered, oldest first; wanted ones are among `lines` as well. */
  orders: (OrderView & { blocked: number[] })[]
  toBuy: Totals
  /** Of what was ordered, and not cancelled. */
  ordered: Totals
}

export interface Totals {
  /** One for each currency, as text: `25.60 EUR`. */
  sums: string[]
  /** How many lines have no price. */
  unpriced: number
}

/** What must be bought and what was ordered, as it stands on the day of the state's clock. */
export function shoppingView(state: State): ShoppingView {
  const lines = shopping(state)
  const orders = [...state.orders.values()]
  return {
    lines,
    orders: orders.map((order) => ({ ...orderView(state, order), blocked: blockedByOrder(state, order) })),
    toBuy: totalsOf(lines),
    ordered: totalsOf(orders.filter(({ ordered, cancelled }) => ordered && cancelled === null)),
  }
}

function totalsOf(lines: readonly Pick<OrderFacts, 'count' | 'price'>[]): Totals {
  const prices = lines.flatMap(({ count, price }) => (price ? [priceOf(count, price)] : []))
  return {
    sums: totalsByCurrency(prices).map((total) => priceText({ ...total, of: null })),
    unpriced: lines.length - prices.length,
  }
}

/** What so many cost. Of litres, to the nearest smallest coin. */
function priceOf(count: number, { minor, currency, inAll }: NonNullable<PartNotes['price']>): Price {
  const named = currency === '' ? null : currency
  const each: Price = { minor, digits: minorDigits(named), currency: named, of: null }
  if (inAll) return each
  return Number.isInteger(count) ? priceOfAll(each, count) : { ...each, minor: Math.round(minor * count) }
}
