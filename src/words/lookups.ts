import type { State } from '../journal/state.ts'
import type { Account } from '../ledger/account.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { Place } from '../ledger/place.ts'
import type { Tightening } from '../plan/tightening.ts'
import type { OrderId } from '../plan/waiting/waiting-facts.ts'
import { containerPlace } from './places.ts'

export interface Lying {
  piece: PieceId
  place: Place
  count: number
}

/** Every place that holds some of a piece. */
export function liesAt(state: State, piece: PieceId): Lying[] {
  return [...(state.ledger.accounts.get(piece)?.at ?? [])].map(([place, count]) => ({ piece, place, count }))
}

/** What lies in a container, slot by slot. */
export function liesIn(state: State, container: number): Lying[] {
  return [...(state.ledger.byContainer.get(container) ?? [])].flatMap((piece) =>
    liesAt(state, piece).filter(({ place }) => containerPlace(place)?.container === container),
  )
}

/** What sits on a piece, on what sits on it, and so on. */
export function liesOn(state: State, carrier: PieceId): Lying[] {
  const found: Lying[] = []
  const open = [carrier]
  for (let on = open.shift(); on !== undefined; on = open.shift()) {
    for (const piece of state.ledger.byPlace.get(on) ?? []) {
      found.push({ piece, place: on, count: state.ledger.accounts.get(piece)?.at.get(on) ?? 0 })
      open.push(piece)
    }
  }
  return found
}

/** The slots of a tray that hold nothing. */
export function freeSlots(state: State, container: number): string[] {
  const taken = new Set(liesIn(state, container).map(({ place }) => containerPlace(place)?.slot))
  const slots = state.containers.get(container)?.slots ?? 0
  return Array.from({ length: slots }, (_, index) => String(index + 1)).filter((slot) => !taken.has(slot))
}

/** The pass and the fastener that come next, or null when every pass is through. */
export function nextFastener({
  passes,
  done,
  order,
  suspect,
}: Tightening): { pass: number; fastener: string } | null {
  if (suspect) return { pass: suspect.pass, fastener: suspect.fastener }
  for (const [pass, through] of done.entries()) {
    const { kind, order: own } = passes[pass] ?? {}
    const wasTurnedOn = passes.slice(0, pass).some((before) => before.kind !== 'back-off')
    const inOrder = own ?? (kind === 'back-off' && wasTurnedOn ? order.toReversed() : order)
    const fastener = inOrder.find((name) => !through.has(name))
    if (fastener !== undefined) return { pass, fastener }
  }
  return null
}

/** The oldest line of an order for the home of a piece of which something is still to come. */
export function openOrderFor(state: State, id: PieceId): OrderId | undefined {
  const line = new Set<PieceId>()
  for (let each: PieceId | undefined = id; each !== undefined && !line.has(each); ) {
    line.add(each)
    each = state.ledger.accounts.get(each)?.piece.replaces
  }
  const open = [...state.orders.values()].find(
    ({ piece, count, arrived, wrong, returned, ordered, cancelled }) =>
      piece !== undefined &&
      line.has(piece) &&
      ordered &&
      cancelled === null &&
      arrived - wrong - returned < count,
  )
  return open?.id
}

/** The piece that took over the home of another. */
export function successorOf(state: State, id: PieceId): Account | undefined {
  return [...state.ledger.accounts.values()].find(({ piece }) => piece.replaces === id)
}

/** The piece that has the home of another now: the last that took it over. None where nothing did. */
export function heirOf(state: State, id: PieceId): Account | undefined {
  let heir = successorOf(state, id)
  for (let next = heir; next !== undefined; next = successorOf(state, next.piece.id)) heir = next
  return heir
}

/** Whether all of a piece went back to where it came from, or is scrapped or lost. */
export function isGone(state: State, id: PieceId): boolean {
  return liesAt(state, id).every(({ place }) => place === 'supplier' || place === 'scrap' || place === 'lost')
}

/** The piece of the same set whose home is a position. */
export function mateAt(state: State, id: PieceId, position: string): PieceId | undefined {
  const own = state.ledger.accounts.get(id)
  return [...state.ledger.accounts.values()].find(
    ({ piece, home, should }) =>
      should > 0 &&
      home.position === position &&
      home.at === own?.home.at &&
      piece.name === own.piece.name &&
      piece.set === own.piece.set,
  )?.piece.id
}
