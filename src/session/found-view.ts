import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { Found } from '../lines/read-found.ts'
import { type FoundHome, foundHomes } from '../plan/found-homes.ts'
import type { Session } from './session.ts'

/** A home that something found may belong to, and its mates of which the same is to be said. */
export interface FoundHomeView extends FoundHome {
  mates: PieceId[]
}

/** Something that turned up, and the homes that it may belong to, the likeliest first. */
export interface FoundView extends Found {
  homes: FoundHomeView[]
}

/** Looks for the homes of something that turned up. */
export function foundView(session: Session, found: Found): FoundView {
  return { ...found, homes: gathered(session.state, foundHomes(session.gates(), found.piece)) }
}

/** A set whose pieces nothing tells apart stands there once. What is missing at a home of its own stands by itself. */
export function gathered(state: State, homes: readonly FoundHome[]): FoundHomeView[] {
  const by = new Map<string, FoundHomeView>()
  for (const home of homes) {
    const { piece, home: own } = state.ledger.accounts.get(home.piece) ?? {}
    const { agrees, standing, undo } = home
    const isOne = standing === 'missing' || own?.position === undefined
    const key = isOne
      ? home.piece
      : JSON.stringify([piece?.set ?? piece?.name, own?.at, agrees, standing, undo])
    const first = by.get(key)
    if (first) first.mates.push(home.piece)
    else by.set(key, { ...home, mates: [] })
  }
  return [...by.values()]
}
