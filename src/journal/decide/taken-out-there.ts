import type { Move, Opening } from '../../ledger/account.ts'
import { balance } from '../../ledger/ledger.ts'
import type { Piece, PieceId } from '../../ledger/piece.ts'
import type { OutingFacts } from '../../plan/waiting/waiting-facts.ts'
import { inSingular } from '../../trade/bag-line/name-words.ts'
import type { TakenOutThere } from '../command.ts'
import type { State } from '../state.ts'
import { given, knownPiece, lawful, refuse, wholeCount } from './refuse.ts'
import { pieceId } from './strip.ts'

/** What a shop took out of what it had: pieces that are new to the record, and moves of those that it knows. */
export interface TakenOut {
  pieces: Piece[]
  openings: Opening[]
  /** Moves of pieces that the record knows. */
  known: Move[]
  /** Moves of the new ones. */
  entering: Move[]
  /** All that was named, new or known. */
  named: PieceId[]
}

/**
 * What was taken out comes loose onto the bench, or is still at the shop. What sat on a piece as a line of its own, or was
 * said to be at the shop still, is moved; all else enters the record with the home of the piece that it came out of.
 */
export function takenOutThere(
  state: State,
  outing: OutingFacts,
  items: readonly TakenOutThere[],
  back: readonly Move[],
): TakenOut {
  const taken: TakenOut = { pieces: [], openings: [], known: [], entering: [], named: [] }
  for (const item of items) {
    const count = wholeCount(item.count)
    const name = given(item.name, 'name')
    const to = item.back ? 'bench' : 'out'
    const known = knownByName(state, outing, name, back)
    if (!known) {
      enterNew(state, taken, { ...item, name, count }, cameOutOf(state, outing, item.from))
      continue
    }
    taken.named.push(known.piece)
    // Said to be at the shop still, which the record has already.
    if (known.from === to) continue
    if (known.from === null) refuse({ code: 'taken-out-already', outing: outing.id, piece: known.piece })
    taken.known.push({ piece: known.piece, count, from: known.from, to })
  }
  lawful(state, [...back, ...taken.known])
  return taken
}

/** The piece of that name that sat on one of those that were out, or was taken out there before; null where there is none. */
function knownByName(
  state: State,
  outing: OutingFacts,
  name: string,
  back: readonly Move[],
): { piece: PieceId; from: Move['from'] | null } | null {
  const carriers = outing.pieces.map(({ piece }) => piece)
  for (const { piece } of state.ledger.accounts.values()) {
    if (!isNamed(piece, name)) continue
    const on = carriers.find((carrier) => balance(state.ledger, piece.id, carrier) > 0)
    if (on !== undefined) return { piece: piece.id, from: on }
    if (!outing.tookOut?.pieces.includes(piece.id) || back.some((move) => move.piece === piece.id)) continue
    return { piece: piece.id, from: balance(state.ledger, piece.id, 'out') > 0 ? 'out' : null }
  }
  return null
}

/** `Gallery plug` and `gallery plugs` are one name, with the size or without. */
function isNamed({ name, size }: Piece, said: string): boolean {
  const words = inSingular(said)
  return words === inSingular(name) || (size !== undefined && words === inSingular(`${name} ${size}`))
}

/** The piece that something came out of: the one that is said, else the first part that went out. */
function cameOutOf(state: State, { id, pieces }: OutingFacts, said: PieceId | undefined): Piece {
  const there = pieces.map(({ piece }) => knownPiece(state, piece).piece)
  if (said !== undefined)
    return there.find((piece) => piece.id === said) ?? refuse({ code: 'not-out', piece: said, outing: id })
  return there.find(({ kind }) => kind === 'part') ?? (there[0] as Piece)
}

function enterNew(state: State, taken: TakenOut, item: TakenOutThere, carrier: Piece): void {
  const { name, count, back, kind = 'part', size, singleUse } = item
  const to = back ? 'bench' : 'out'
  // `2 plugs back, 1 plug not back` is one lot.
  const lot = taken.pieces.find((piece) => isNamed(piece, name) && piece.size === size)
  if (lot) {
    lot.should = wholeCount(lot.should + count)
    for (const opening of taken.openings) if (opening.piece === lot.id) opening.count += count
    taken.entering.push({ piece: lot.id, count, from: 'machine', to })
    return
  }
  const id = pieceId(state, taken.pieces.length)
  taken.pieces.push({
    id,
    kind,
    name,
    home: { at: carrier.name },
    should: count,
    size,
    singleUse: singleUse || undefined,
    step: carrier.step,
  })
  taken.openings.push({ piece: id, count, at: 'machine' })
  taken.entering.push({ piece: id, count, from: 'machine', to })
  taken.named.push(id)
}
