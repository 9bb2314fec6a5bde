import type { Account, Move } from '../../ledger/account.ts'
import { balance } from '../../ledger/ledger.ts'
import { belongsInToolbox, isMatched, type Piece, type PieceId } from '../../ledger/piece.ts'
import type { Place } from '../../ledger/place.ts'
import { whyUnusable } from '../../plan/buying/short-pieces.ts'
import { heldBeside } from '../../plan/succession.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { knownPiece, refuse, wholeCount } from './refuse.ts'
import { pieceId } from './strip.ts'

/** What arrives for the home of a piece. */
export interface Arriving {
  piece: PieceId
  count: number
  to: Place
  /** It takes the place of the one that is there, which a used or condemned one gives up anyhow. */
  instead: boolean
  size?: string | undefined
}

type Arrived = Required<Pick<EntryBodyOf<'supplied'>, 'pieces' | 'openings' | 'moves' | 'retired'>> &
  Pick<EntryBodyOf<'supplied'>, 'compare'>

/**
 * New pieces: for a short home the same piece, in place of an old one a successor that takes its home. A new part whose old
 * one is at hand is to be held beside it.
 */
export function newPieces(state: State, { piece: id, count, to, instead, size }: Arriving): Arrived {
  const old = knownPiece(state, id)
  if (belongsInToolbox(old.piece) || old.should === 0) refuse({ code: 'not-for-home', piece: id })
  wholeCount(count)
  if (to === 'machine') refuse({ code: 'through-a-step', piece: id, step: old.piece.step })
  const matched = isMatched(old.piece)
  if (!instead && whyUnusable(state, id) === null) {
    // One more of a matched piece would be a second piece with one home.
    if (matched && owedFromOutside(old) < count) refuse({ code: 'one-by-one', pieces: [id] })
    // Where the old one is lost or scrapped the new one is not it, and takes its home as a piece of its own.
    if (!matched || old.entered === 0) {
      return {
        pieces: [],
        openings: [{ piece: id, count, at: 'supplier' }],
        moves: arrival(id, count, to),
        retired: [],
      }
    }
  }
  if (matched && count !== 1) refuse({ code: 'count-wrong', count })
  if (balance(state.ledger, id, 'machine') > 0) refuse({ code: 'already-fitted', piece: id })
  const successor: Piece = {
    ...old.piece,
    id: pieceId(state),
    home: old.home,
    should: old.should,
    size: size ?? old.piece.size,
    replaces: id,
  }
  const beside = successor.kind === 'part' ? heldBeside(state, id) : null
  return {
    pieces: [successor],
    openings: [{ piece: successor.id, count, at: 'supplier' }],
    moves: arrival(successor.id, count, to),
    retired: [id],
    compare: beside === null ? undefined : [{ piece: successor.id, old: beside }],
  }
}

/** What is ordered and not here yet stays at the supplier. */
function arrival(piece: PieceId, count: number, to: Place): Move[] {
  return to === 'supplier' ? [] : [{ piece, count, from: 'supplier', to }]
}

function owedFromOutside(account: Account): number {
  const { at } = account
  const away = (at.get('scrap') ?? 0) + (at.get('lost') ?? 0)
  return account.should - (account.entered - away)
}
