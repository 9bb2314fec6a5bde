import type { Account, Ledger, Move, Opening } from './account.ts'
import { brokenLaws, LawBroken } from './laws.ts'
import type { Piece, PieceId } from './piece.ts'
import { containerOf, type Place } from './place.ts'

/** A ledger before anything entered. */
export function emptyLedger(): Ledger {
  return { accounts: new Map(), byPlace: new Map(), byContainer: new Map() }
}

/** Opens the account of a new piece, with nothing in it yet. What it replaces came before it. Throws LawBroken. */
export function openAccount(ledger: Ledger, piece: Piece): void {
  if (ledger.accounts.has(piece.id)) throw new LawBroken([{ law: 'account-twice', piece: piece.id }])
  // So no line of heirs ever comes back to itself.
  if (piece.replaces !== undefined) accountOf(ledger, piece.replaces)
  ledger.accounts.set(piece.id, {
    piece,
    home: piece.home,
    should: piece.should,
    entered: 0,
    at: new Map(),
  })
}

/** Pieces enter from outside: the only way a total ever grows. Throws LawBroken. */
export function enter(ledger: Ledger, opening: Opening): void {
  const account = accountOf(ledger, opening.piece)
  if (!Number.isInteger(opening.count) || opening.count < 0) {
    throw new LawBroken([{ law: 'not-whole', piece: opening.piece, count: opening.count }])
  }
  account.entered += opening.count
  shift(ledger, account, opening.at, opening.count)
}

/** Carries out moves, all or none. Throws LawBroken with every law that they would break. */
export function post(ledger: Ledger, moves: readonly Move[]): void {
  const broken = brokenLaws(ledger, moves)
  if (broken.length > 0) throw new LawBroken(broken)
  for (const move of moves) {
    const account = accountOf(ledger, move.piece)
    shift(ledger, account, move.from, -move.count)
    shift(ledger, account, move.to, move.count)
  }
}

/** How many of a piece are in a place. */
export function balance(ledger: Ledger, piece: PieceId, place: Place): number {
  return ledger.accounts.get(piece)?.at.get(place) ?? 0
}

export interface Holding {
  piece: PieceId
  place: Place
  count: number
}

/** What lies in a place that is no container. */
export function holdingsAt(ledger: Ledger, place: Place): Holding[] {
  return [...(ledger.byPlace.get(place) ?? [])].map((piece) => ({
    piece,
    place,
    count: balance(ledger, piece, place),
  }))
}

/** What lies in a container, slot by slot. Bags standing in it are not looked into. */
export function holdingsIn(ledger: Ledger, container: number): Holding[] {
  const holdings: Holding[] = []
  for (const piece of ledger.byContainer.get(container) ?? []) {
    for (const [place, count] of accountOf(ledger, piece).at) {
      if (containerOf(place) === container) holdings.push({ piece, place, count })
    }
  }
  return holdings
}

/** Every place that holds some of a piece. */
export function placesOf(ledger: Ledger, piece: PieceId): Holding[] {
  return [...(ledger.accounts.get(piece)?.at ?? [])].map(([place, count]) => ({ piece, place, count }))
}

/** The account of a piece. Throws LawBroken for a piece that was never entered. */
export function accountOf(ledger: Ledger, piece: PieceId): Account {
  const account = ledger.accounts.get(piece)
  if (!account) throw new LawBroken([{ law: 'unknown-piece', piece }])
  return account
}

function shift(ledger: Ledger, account: Account, place: Place, by: number): void {
  const count = (account.at.get(place) ?? 0) + by
  const { id } = account.piece
  if (count === 0) account.at.delete(place)
  else account.at.set(place, count)
  index(ledger.byPlace, place, id, count !== 0)
  const container = containerOf(place)
  if (container === null) return
  const inAnySlot = [...account.at.keys()].some((other) => containerOf(other) === container)
  index(ledger.byContainer, container, id, inAnySlot)
}

function index<Key>(by: Map<Key, Set<PieceId>>, key: Key, piece: PieceId, present: boolean): void {
  let pieces = by.get(key)
  if (!pieces) {
    pieces = new Set()
    by.set(key, pieces)
  }
  if (present) pieces.add(piece)
  else pieces.delete(piece)
  if (pieces.size === 0) by.delete(key)
}
