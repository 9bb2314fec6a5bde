import { orderName } from '../../words/waiting/names.ts'
import { notesText, standingText } from '../../words/waiting/order-words.ts'
import type { OrderRecord } from '../facts/orders.ts'
import { type Line, line } from './line.ts'
import { history, type Telling } from './telling.ts'

/** An order line with its number, price and source, how it stands, and its history. */
export function orderText(telling: Telling, record: OrderRecord): Line[] {
  const { state } = telling
  const { order, entries } = record
  const facts = [orderName(state, order.id), ...notesText(order)].join(', ')
  return [
    line(`${facts}: ${standingText(state, record)}`, 2),
    ...entries.map((entry) => history(telling, entry, 4)),
  ]
}
