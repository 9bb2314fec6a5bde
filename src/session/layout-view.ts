import type { State } from '../journal/state.ts'
import type { Account } from '../ledger/account.ts'
import { accountOf, placesOf } from '../ledger/ledger.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { Place } from '../ledger/place.ts'
import type { LayoutFacts } from '../plan/facts.ts'
import { layoutOf, type PatternFault, patternOf } from '../plan/pattern.ts'
import type { PositionLayout } from '../trade/position-layout/position-layout.ts'
import { proposeLayout } from '../trade/position-layout/propose-layout.ts'

/** The positions of the pattern that a piece is of, drawn, with what each of them is for. */
export interface LayoutView {
  piece: PieceId
  /** As in the record; else as the names of the positions suggest it. Null for what has no positions. */
  layout: LayoutFacts | PositionLayout | null
  isProposed: boolean
  fault: PatternFault | null
  /** The positions in the order in which they were written down, with the piece of each. */
  positions: { position: string; piece: PieceId }[]
  /** The size of the piece at each position, where it has one. */
  sizes: Map<string, string>
  /** Where the piece of each position is now; not for look-alikes that lie in several places. */
  lies: Map<string, Place>
  /** The order in which they are tightened; empty where no tightening is set. */
  order: string[]
}

/** Gathers what a drawing of a pattern shows. */
export function layoutView(state: State, piece: PieceId): LayoutView {
  const pattern = patternOf(state, piece)
  if ('code' in pattern) return { ...NOTHING, piece, fault: pattern }
  const known = layoutOf(state, piece)
  const accounts = pattern.places.map((place) => ({
    position: place.position,
    account: accountOf(state.ledger, place.piece),
  }))
  return {
    piece,
    layout: known ?? proposeLayout(pattern.places.map(({ position }) => position)).layout,
    isProposed: known === undefined,
    fault: null,
    positions: pattern.places,
    sizes: byPosition(accounts, ({ piece: { size } }) => size),
    lies: byPosition(accounts, (account) => onlyPlace(state, account)),
    order: orderOf(state, pattern.places),
  }
}

const NOTHING = {
  layout: null,
  isProposed: false,
  positions: [],
  sizes: new Map<string, string>(),
  lies: new Map<string, Place>(),
  order: [],
}

function byPosition<Value>(
  accounts: readonly { position: string; account: Account }[],
  read: (account: Account) => Value | undefined,
): Map<string, Value> {
  return new Map(
    accounts.flatMap(({ position, account }) => {
      const value = read(account)
      return value === undefined ? [] : [[position, value] as const]
    }),
  )
}

/** Of look-alikes in several places nobody knows which is where. */
function onlyPlace(state: State, { piece }: Account): Place | undefined {
  const [place, ...others] = placesOf(state.ledger, piece.id)
  return others.length === 0 ? place?.place : undefined
}

function orderOf(state: State, places: readonly { position: string; piece: PieceId }[]): string[] {
  const names = new Set(places.map(({ position }) => position))
  const pieces = new Set(places.map(({ piece }) => piece))
  const own = [...state.tightenings.values()].findLast(
    ({ piece, order }) => pieces.has(piece) && order.every((name) => names.has(name)),
  )
  return [...(own?.order ?? [])]
}
