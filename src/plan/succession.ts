import { placesOf } from '../ledger/ledger.ts'
import type { PieceId } from '../ledger/piece.ts'
import { carrierOf, containerOf, type Place } from '../ledger/place.ts'
import type { PlanFacts } from './facts.ts'

/** The pieces whose home came down to a piece, the last before it first. */
export function forebears(facts: PlanFacts, id: PieceId): PieceId[] {
  const found: PieceId[] = []
  const before = (piece: PieceId) => facts.ledger.accounts.get(piece)?.piece.replaces
  for (let old = before(id); old !== undefined; old = before(old)) found.push(old)
  return found
}

/** The pieces that were replaced, each with the one that took its home. */
export function successors({ ledger }: PlanFacts): Map<PieceId, PieceId> {
  const by = new Map<PieceId, PieceId>()
  for (const { piece } of ledger.accounts.values()) {
    if (piece.replaces !== undefined) by.set(piece.replaces, piece.id)
  }
  return by
}

/** For each piece the one that has its home now: itself, or the last that took it over. */
export function heirs(facts: PlanFacts): (piece: PieceId) => PieceId {
  const successor = successors(facts)
  return (piece) => {
    let heir = piece
    for (let next = successor.get(heir); next !== undefined; next = successor.get(heir)) heir = next
    return heir
  }
}

/**
 * The piece that a new one is held beside, when it takes the home of another: that other, or where that came new itself
 * and was never found right, the one that it was held beside. Null where it is not at hand.
 */
export function heldBeside(facts: PlanFacts, replaced: PieceId): PieceId | null {
  const comparison = facts.comparisons.get(replaced)
  const old = comparison && comparison.verdict !== 'right' ? comparison.old : replaced
  return isAtHand(facts, old) ? old : null
}

/** Whether some of a piece is still to be had in the house or at a shop, to be held beside another. */
export function isAtHand(facts: PlanFacts, id: PieceId): boolean {
  return placesOf(facts.ledger, id).some(({ place }) => isPresent(facts, place))
}

/** Whether all of a piece went back to where it came from, or is scrapped or lost: nothing can be said of it any more. */
export function isGone(facts: PlanFacts, id: PieceId): boolean {
  const places = placesOf(facts.ledger, id)
  return (
    places.length > 0 &&
    places.every(({ place }) => place === 'supplier' || place === 'scrap' || place === 'lost')
  )
}

function isPresent(facts: PlanFacts, place: Place): boolean {
  const carrier = carrierOf(place)
  if (carrier === null) return place === 'bench' || place === 'out' || containerOf(place) !== null
  return placesOf(facts.ledger, carrier).some((each) => isPresent(facts, each.place))
}
