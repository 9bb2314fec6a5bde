import type { State } from '../../journal/state.ts'
import type { OrderId } from '../../plan/waiting/waiting-facts.ts'
import { say } from '../cures.ts'
import { told } from '../told.ts'
import { orderName } from '../waiting/names.ts'
import { amountText } from '../waiting/order-words.ts'
import type { Tellers } from './tellers.ts'

/** Refusals about what was ordered and what arrives. */
export const orderRefusals: Tellers<
  'order-cancelled' | 'order-arrived' | 'more-than-ordered' | 'more-than-arrived'
> = {
  'order-cancelled': (state, { order }) =>
    told(
      `${orderName(state, order)}, was cancelled, because ${state.orders.get(order)?.cancelled ?? ''}`,
      `if it is wanted after all: ${buyAgain(state, order)}`,
    ),
  'order-arrived': (state, { order }) =>
    told(
      `${orderName(state, order)}: all of it has arrived, and nothing is still to come`,
      `if more came: ${say(`buy ${order} ${more(state, order, 1)}`)} first; what is not right goes back: ${say(`send back ${order} because ...`)}`,
    ),
  'more-than-ordered': (state, { order, open, arrived }) => {
    const unit = state.orders.get(order)?.unit
    const over = Number((arrived - open).toFixed(3))
    return told(
      `${orderName(state, order)}: ${amountText(open, unit)} to come, ${amountText(arrived, unit)} said to be here: ${amountText(over, unit)} too many`,
      `count again; if they are wanted, ${say(`buy ${order} ${more(state, order, over)}`)} first; ${spareWords(order, arrived, over)}`,
    )
  },
  'more-than-arrived': (state, { order, here, wanted }) => {
    const unit = state.orders.get(order)?.unit
    return here <= 0
      ? told(
          `${orderName(state, order)}: nothing of it is here, so nothing can go back`,
          `${say(`arrived ${order}`)} when it is here; if it is not wanted any more, ${say(`cancel ${order} because ...`)}`,
        )
      : told(
          `${orderName(state, order)}: ${amountText(here, unit)} here, ${amountText(wanted, unit)} to go back: ${amountText(Number((wanted - here).toFixed(3)), unit)} too many`,
          'say the number again',
        )
  },
}

function spareWords(order: OrderId, arrived: number, over: number): string {
  return Number.isInteger(over)
    ? `if they stay as spares, ${say(`arrived ${order} ${arrived} spare ${over}`)}`
    : 'then say it again'
}

/** What a line would come to with more. */
function more(state: State, id: OrderId, by: number): number {
  return Number(((state.orders.get(id)?.count ?? 0) + by).toFixed(3))
}

function buyAgain(state: State, id: OrderId): string {
  const { count = 1, piece, unit, name } = state.orders.get(id) ?? {}
  return piece === undefined
    ? say(`want ${count} ${unit ? `${unit} ` : ''}${name}`)
    : say(`buy ${count} ${piece}`)
}
