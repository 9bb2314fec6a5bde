import type { State } from '../journal/state.ts'
import { openOf, ordersFor } from '../plan/buying/order-lines.ts'
import type { OrderFacts, OrderId } from '../plan/waiting/waiting-facts.ts'
import { findPieces } from './find-piece.ts'
import type { Line } from './line.ts'
import { misread } from './stopped.ts'

/** What of the orders is still to come, oldest first. */
export function openOrders(state: State): OrderFacts[] {
  return [...state.orders.values()].filter((order) => openOf(order) > 0)
}

/** The number of a line, `o3`; null for other words. */
export function orderNumber(words: string): OrderId | null {
  const number = /^(?:order )?o(\d{1,9})$/i.exec(words.trim())?.[1]
  return number === undefined ? null : `o${Number(number)}`
}

/** The lines among some that words name: by the piece that they are for, or by what they are called. */
export function ordersNamed(words: string, among: readonly OrderFacts[], state: State): OrderFacts[] {
  const asked = wordsOf(words)
  const named = among.filter(({ name }) => asked.every((word) => wordsOf(name).includes(word)))
  if (named.length > 0) return named
  const ids = new Set(
    findPieces(words, state).flatMap((piece) => ordersFor(state, piece).map(({ id }) => id)),
  )
  return among.filter(({ id }) => ids.has(id))
}

/** Stops the reading: no line, or none that is still to come, goes by these words. */
export function noSuchOrder(line: Line, part: string): never {
  misread({ code: 'no-such-order', part, open: openOrders(line.state).map(({ id }) => id) })
}

function wordsOf(text: string): string[] {
  return text
    .toLowerCase()
    .split(/[\s,/:]+/u)
    .map((word) => word.replace(/(?<=\p{L}{2})s$/u, ''))
    .filter((word) => word !== '')
}
