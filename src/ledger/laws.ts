import type { Account, Ledger, Move } from './account.ts'
import { belongsInToolbox, isMatched, type PieceId } from './piece.ts'
import { carrierOf, type Place } from './place.ts'

/** A law that a move would break, with the facts that show it. */
export type Violation =
  | { law: 'unknown-piece'; piece: PieceId }
  | { law: 'account-twice'; piece: PieceId }
  | { law: 'not-whole'; piece: PieceId; count: number }
  | { law: 'same-place'; piece: PieceId; place: Place }
  /** A piece cannot sit on one that is not there, nor on itself, by way of others either. */
  | { law: 'carried-by-itself' | 'no-carrier'; piece: PieceId; carrier: PieceId }
  | { law: 'more-than-there'; piece: PieceId; place: Place; there: number; wanted: number }
  | { law: 'not-its-position'; piece: PieceId; own: string; tried: string }
  | { law: 'position-not-said'; piece: PieceId; own: string }
  | { law: 'home-full'; piece: PieceId; should: number; there: number; wanted: number }
  | { law: 'not-conserved'; piece: PieceId; entered: number; found: number }

/** Thrown when something would break a law: a defect of ours or a damaged record, never a user's slip. */
export class LawBroken extends Error {
  readonly violations: Violation[]
  constructor(violations: Violation[]) {
    super(`a law of the ledger would be broken: ${JSON.stringify(violations)}`)
    this.name = 'LawBroken'
    this.violations = violations
  }
}

/**
 * Which laws a set of moves would break, judged together and in order: no place holds less than nothing,
 * a matched piece goes home only to its own position, no home takes more than belongs there.
 */
export function brokenLaws(ledger: Ledger, moves: readonly Move[]): Violation[] {
  const broken: Violation[] = []
  const changed = new Map<PieceId, Map<Place, number>>()
  const there = (piece: PieceId, place: Place) =>
    (ledger.accounts.get(piece)?.at.get(place) ?? 0) + (changed.get(piece)?.get(place) ?? 0)
  const change = (piece: PieceId, place: Place, by: number) => {
    const places = changed.get(piece) ?? new Map<Place, number>()
    changed.set(piece, places.set(place, (places.get(place) ?? 0) + by))
  }
  // A move before it in the same act counts, too: two that are put on each other at once are a circle.
  const carriersOf = (piece: PieceId): PieceId[] =>
    [...(ledger.accounts.get(piece)?.at.keys() ?? []), ...(changed.get(piece)?.keys() ?? [])].flatMap(
      (place) => (there(piece, place) > 0 ? (carrierOf(place) ?? []) : []),
    )

  for (const move of moves) {
    const { piece, count, from, to } = move
    const account = ledger.accounts.get(piece)
    if (!account) {
      broken.push({ law: 'unknown-piece', piece })
      continue
    }
    if (!Number.isInteger(count) || count < 1) broken.push({ law: 'not-whole', piece, count })
    else if (from === to) broken.push({ law: 'same-place', piece, place: from })
    else if (there(piece, from) < count) {
      broken.push({ law: 'more-than-there', piece, place: from, there: there(piece, from), wanted: count })
    } else {
      const carrier = carrierOf(to)
      if (carrier !== null && !ledger.accounts.has(carrier))
        broken.push({ law: 'no-carrier', piece, carrier })
      else if (carrier !== null && isCarriedBy(carriersOf, carrier, piece))
        broken.push({ law: 'carried-by-itself', piece, carrier })
      if (to === 'machine') broken.push(...brokenAtHome(account, move, there(piece, 'machine')))
      change(piece, from, -count)
      change(piece, to, count)
    }
  }
  return broken
}

/** Whether a piece is another, or sits on it, by way of others too. */
function isCarriedBy(carriersOf: (piece: PieceId) => PieceId[], piece: PieceId, by: PieceId): boolean {
  const seen = new Set<PieceId>()
  const open = [piece]
  for (let one = open.pop(); one !== undefined; one = open.pop()) {
    if (one === by) return true
    if (seen.has(one)) continue
    seen.add(one)
    open.push(...carriersOf(one))
  }
  return false
}

function brokenAtHome(account: Account, move: Move, there: number): Violation[] {
  const piece = account.piece.id
  // An aid is put into the machine for the work: it has no home there to fill.
  if (belongsInToolbox(account.piece)) return []
  const own = account.home.position
  if (own !== undefined && move.position === undefined) return [{ law: 'position-not-said', piece, own }]
  if (own !== undefined && move.position !== own) {
    return [{ law: 'not-its-position', piece, own, tried: move.position ?? '' }]
  }
  const shared = account.home.alikeAt
  if (shared && move.position !== undefined && !shared.includes(move.position)) {
    return [{ law: 'not-its-position', piece, own: shared.join(', '), tried: move.position }]
  }
  if (there + move.count > account.should) {
    return [{ law: 'home-full', piece, should: account.should, there, wanted: move.count }]
  }
  return []
}

/** Every law over the whole ledger, for tests and for reading a record back. Empty when all hold. */
export function auditLedger(ledger: Ledger): Violation[] {
  const broken: Violation[] = []
  for (const { piece, entered, at } of ledger.accounts.values()) {
    let found = 0
    for (const [place, count] of at) {
      found += count
      if (count < 0) broken.push({ law: 'more-than-there', piece: piece.id, place, there: count, wanted: 0 })
    }
    if (found !== entered) broken.push({ law: 'not-conserved', piece: piece.id, entered, found })
    if (isMatched(piece) && entered > 1) broken.push({ law: 'not-whole', piece: piece.id, count: entered })
  }
  return broken
}
