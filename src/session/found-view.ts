import type { State } from '../journal/state.ts'
import { balance } from '../ledger/ledger.ts'
import { belongsInToolbox, type PieceId } from '../ledger/piece.ts'
import type { Place } from '../ledger/place.ts'
import type { Found } from '../lines/read-found.ts'
import { outOfToolbox } from '../plan/contents.ts'
import { type FoundHome, foundHomes } from '../plan/found/found-homes.ts'
import { foundAgreement } from '../plan/found/found-piece.ts'
import type { Session } from './session.ts'

/** A home that something found may belong to, and its mates of which the same is to be said. */
export interface FoundHomeView extends FoundHome {
  mates: PieceId[]
}

/** Something that turned up, and the homes that it may belong to, the likeliest first. */
export interface FoundView extends Found {
  homes: FoundHomeView[]
  /** Aids and tools that go by its words and are not in the toolbox, as the record has it; lost ones first. */
  toolbox: { piece: PieceId; place: Place; count: number }[]
}

/** Looks for the homes of something that turned up. */
export function foundView(session: Session, found: Found): FoundView {
  const { state } = session
  return {
    ...found,
    homes: gathered(state, foundHomes(session.gates(), found.piece)),
    toolbox: outOfToolboxAs(state, found),
  }
}

/** Aids and tools that may be what was found: they have no size, so only their words tell. */
export function outOfToolboxAs(state: State, { piece: found }: Found): FoundView['toolbox'] {
  return [...state.ledger.accounts.values()].flatMap((account) => {
    const { piece } = account
    if (!belongsInToolbox(piece) || foundAgreement(found, account).name !== 'yes') return []
    const lost = balance(state.ledger, piece.id, 'lost')
    const lying = [
      ...(lost > 0 ? [{ place: 'lost' as const, count: lost }] : []),
      ...outOfToolbox(state, account),
    ]
    return lying.map((each) => ({ piece: piece.id, ...each }))
  })
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
