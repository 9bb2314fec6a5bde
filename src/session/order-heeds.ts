import type { State } from '../journal/state.ts'
import type { Opening } from '../ledger/account.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { Place } from '../ledger/place.ts'
import { openOf, ordersFor } from '../plan/buying/order-lines.ts'
import { shortageOf } from '../plan/buying/short-pieces.ts'
import { owing } from '../plan/contents.ts'
import { heirs } from '../plan/succession.ts'
import type { OrderId } from '../plan/waiting/waiting-facts.ts'
import type { Entry } from './stored-entry.ts'

/** What is worth a look when pieces are ordered, and when new ones are here. */
export type OrderHeed =
  /** Still to come, and nothing waits for them any more: what came otherwise has filled their homes. */
  | { heed: 'order-unneeded'; orders: OrderId[] }
  /** A kit held fewer of a thing than are owed. */
  | { heed: 'kit-short'; name: string; count: number; short: number }
  /** More are here than their home asks for, and nobody has said that the rest is spare. */
  | { heed: 'too-many'; piece: PieceId; count: number; should: number; place: Place }
  /** More is ordered for a home than it lacks, by this line and others. */
  | { heed: 'over-ordered'; order: OrderId; piece: PieceId; open: number; short: number }

/** What to say beside an entry by which pieces are ordered, or new ones came. */
export function orderHeeds(state: State, entry: Entry): OrderHeed[] {
  if (entry.type === 'order-lined') return entry.orders.flatMap((line) => overOrdered(state, line))
  if (entry.type !== 'supplied') return []
  const { kit, order, openings } = entry
  const short = (kit?.lines ?? []).filter((line) => line.short > 0)
  const heeds: OrderHeed[] = short.map(({ name, count, short: lacking }) => ({
    heed: 'kit-short',
    name,
    count,
    short: lacking,
  }))
  heeds.push(...tooMany(state, openings))
  if (order && !kit) return heeds
  const filled = openings.flatMap(({ piece }) => {
    const account = state.ledger.accounts.get(piece)
    return account && account.should > 0 && shortageOf(state, account).short === 0 ? [piece] : []
  })
  const unneeded = filled.flatMap((piece) => ordersFor(state, piece).filter((each) => openOf(each) > 0))
  const orders = [...new Set(unneeded.map(({ id }) => id))]
  return orders.length > 0 ? [...heeds, { heed: 'order-unneeded', orders }] : heeds
}

/** Beyond what belongs at a home, what came lies about: that is a slip, or a spare that was not called one. */
function tooMany(state: State, openings: readonly Opening[]): OrderHeed[] {
  return [...new Set(openings.map(({ piece }) => piece))].flatMap((piece): OrderHeed[] => {
    const account = state.ledger.accounts.get(piece)
    if (!account || account.should === 0) return []
    const { extra } = owing(state, account)
    const count = extra.reduce((sum, lying) => sum + lying.count, 0)
    const place = extra.at(-1)?.place
    return place === undefined ? [] : [{ heed: 'too-many', piece, count, should: account.should, place }]
  })
}

function overOrdered(state: State, { id, piece }: { id: OrderId; piece?: PieceId | undefined }): OrderHeed[] {
  const account = piece === undefined ? undefined : state.ledger.accounts.get(heirs(state)(piece))
  if (!account) return []
  const { short } = shortageOf(state, account)
  const open = ordersFor(state, account.piece.id).reduce((sum, order) => sum + openOf(order), 0)
  // Who buys one for a good one that is there knows why.
  return short > 0 && open > short
    ? [{ heed: 'over-ordered', order: id, piece: account.piece.id, open, short }]
    : []
}
