import type { State } from '../journal/state.ts'
import { openOf, ordersFor } from '../plan/order-lines.ts'
import { shortageOf } from '../plan/short-pieces.ts'
import type { OrderId } from '../plan/waiting-facts.ts'
import type { Entry } from './stored-entry.ts'

/** What is worth a look when new pieces are here. */
export type OrderHeed =
  /** Still to come, and nothing waits for them any more: what came otherwise has filled their homes. */
  | { heed: 'order-unneeded'; orders: OrderId[] }
  /** A kit held fewer of a thing than are owed. */
  | { heed: 'kit-short'; name: string; count: number; short: number }

/** What to say beside an entry by which new pieces came. */
export function orderHeeds(state: State, entry: Entry): OrderHeed[] {
  if (entry.type !== 'supplied') return []
  const { kit, order, openings } = entry
  const short = (kit?.lines ?? []).filter((line) => line.short > 0)
  const heeds: OrderHeed[] = short.map(({ name, count, short: lacking }) => ({
    heed: 'kit-short',
    name,
    count,
    short: lacking,
  }))
  if (order && !kit) return heeds
  const filled = openings.flatMap(({ piece }) => {
    const account = state.ledger.accounts.get(piece)
    return account && account.should > 0 && shortageOf(state, account).short === 0 ? [piece] : []
  })
  const unneeded = filled.flatMap((piece) => ordersFor(state, piece).filter((each) => openOf(each) > 0))
  const orders = [...new Set(unneeded.map(({ id }) => id))]
  return orders.length > 0 ? [...heeds, { heed: 'order-unneeded', orders }] : heeds
}
