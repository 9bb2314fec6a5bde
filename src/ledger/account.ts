import type { Home, Piece, PieceId } from './piece.ts'
import type { Place } from './place.ts'

/** Where pieces enter the account: on the machine as found, from a supplier, or out of the toolbox. */
export type Source = 'machine' | 'supplier' | 'toolbox'

export interface Opening {
  piece: PieceId
  count: number
  at: Source
}

/** `count` of a piece went from one place to another; `position` is where on the machine it was put. */
export interface Move {
  piece: PieceId
  count: number
  from: Place
  to: Place
  position?: string | undefined
}

export interface Account {
  piece: Piece
  /** As the piece's own, until a decision gives it another. */
  home: Home
  /** How many belong at home now: a decision or a replacement changes it. */
  should: number
  entered: number
  at: Map<Place, number>
}

/** Every piece with its places. Owned by one fold, which changes it in place. */
export interface Ledger {
  accounts: Map<PieceId, Account>
  /** Which pieces lie in a place; kept beside the accounts so that a look-up does not walk them all. */
  byPlace: Map<Place, Set<PieceId>>
  /** The same by container, slots taken together. */
  byContainer: Map<number, Set<PieceId>>
}
