import type { State } from '../journal/state.ts'
import type { Account } from '../ledger/account.ts'
import type { Home, Piece, PieceId } from '../ledger/piece.ts'
import { joined, singular } from './grammar.ts'
import { liesOn } from './lookups.ts'
import { whereName } from './places.ts'

/** A piece without a count: `valve cover bolts M6x25 hex 10`, `cam cap I3`, `hose end at pump outlet`. */
export function pieceName(state: State, id: PieceId): string {
  const account = state.ledger.accounts.get(id)
  if (!account) return `piece ${id}`
  return nameOf(account.piece, account.home, Math.max(account.should, account.entered))
}

/** What stands behind a count that is written elsewhere, as in large figures: `× valve cover bolts M6x25`. */
export function behindCount(state: State, id: PieceId, count: number): string {
  return countedPiece(state, id, count).replace(/^\d+ /, '')
}

/** A number of a piece: `4 × valve cover bolts M6x25 hex 10`. A matched piece is one of its own: `cam cap I3`. */
export function countedPiece(state: State, id: PieceId, count: number): string {
  const account = state.ledger.accounts.get(id)
  return account ? countedName(account.piece, account.home, count) : `${count} × piece ${id}`
}

/** Numbers of several pieces, those of one set together: `1 × cylinder head, 2 × cam caps I1, I2 and 2 × studs M8x35`. */
export function countedPieces(state: State, pieces: readonly { piece: PieceId; count: number }[]): string {
  const sets = new Map<string, { piece: Piece | undefined; positions: string[]; only: string }>()
  for (const { piece: id, count } of pieces) {
    const { piece, home } = state.ledger.accounts.get(id) ?? {}
    const isOne = piece !== undefined && home?.position !== undefined && count === 1
    const key = isOne ? [piece.name, piece.size, home.at, piece.step].join('\n') : `${id} ${sets.size}`
    const set = sets.get(key) ?? {
      piece,
      positions: [],
      only: countedPiece(state, id, count),
    }
    sets.set(key, set)
    if (isOne) set.positions.push(home.position ?? '')
  }
  return joined(
    [...sets.values()].map(({ piece, positions, only }) =>
      piece && positions.length > 1
        ? `${positions.length} × ${piece.name}${positionsText(piece, positions)}`
        : only,
    ),
  )
}

/** Behind the name of several of a set: ` I1, I2`, ` ends at tank, rail`. */
export function positionsText({ kind, name }: Piece, positions: readonly string[]): string {
  const ends = /\bends?$/i.test(name) ? ' at' : ' ends at'
  return `${kind === 'connection' ? ends : ''} ${positions.join(', ')}`
}

/** The same for a piece that the state may not know, as in an entry since undone. */
export function countedName(piece: Piece, home: Home, count: number): string {
  const name = nameOf(piece, home, count)
  return home.position !== undefined && count === 1 ? name : `${count} × ${name}`
}

/** What sits on a piece: ` with 3 × pump studs M6x25 on it`; nothing where none does. */
export function carriedText(state: State, id: PieceId): string {
  const riders = liesOn(state, id).map(({ piece, count }) => countedPiece(state, piece, count))
  return riders.length === 0 ? '' : ` with ${joined(riders)} on ${agree(state, id, 'it', 'them')}`
}

/** The verb that goes with a piece's name: `agree(state, id, 'belongs', 'belong')`. */
export function agree(state: State, id: PieceId, one: string, many: string): string {
  const { piece, home, should, entered } = state.ledger.accounts.get(id) ?? {}
  if (!piece || home?.position !== undefined || Math.max(should ?? 0, entered ?? 0) === 1) return one
  return singular(piece.name) === piece.name ? one : many
}

/** Where all of a piece is: `5 in bag 1 and 3 on the bench`, `in bag 1`. */
export function liesText(state: State, id: PieceId): string {
  const places = [...(state.ledger.accounts.get(id)?.at ?? [])]
  const said = places.map(
    ([place, count]) => `${places.length > 1 ? `${count} ` : ''}${whereName(state, place)}`,
  )
  return joined(said) || 'nowhere'
}

/** Where a piece belongs on the machine: `cylinder head / cam caps / I3`. */
export function homeName(state: State, id: PieceId): string {
  const account = state.ledger.accounts.get(id)
  return account ? homeOf(account) : `the home of piece ${id}`
}

/** A position as it is said: `I3`, `position 4`. */
export function positionName(position: string): string {
  return /^\d+$/.test(position) ? `position ${position}` : position
}

/** Whether it is a piece that nobody knows, found in a recount. */
export function isStray({ piece }: Account): boolean {
  return piece.should === 0 && piece.home.at.startsWith('unknown, found in ')
}

/** So many of a piece, without saying how many: `cam cap I3`, `seat bolts M6x25`. */
export function nameOf({ kind, name, size, set }: Piece, { at, position }: Home, count: number): string {
  const noun = count === 1 || position !== undefined ? singular(name) : name
  const sized = size === undefined || noun.endsWith(size) ? noun : `${noun} ${size}`
  if (position === undefined) {
    const isAside = (kind === 'aid' || kind === 'tool') && at !== 'toolbox'
    return isAside ? `${sized} at ${at}` : sized
  }
  if (kind !== 'connection') return `${sized} ${positionName(position)}`
  // One of several ends of one hose; a plug or a union alone is no end.
  const end = set !== undefined && !/\bends?$/i.test(noun) ? ' end' : ''
  return `${sized}${end} at ${position}`
}

function homeOf({ piece, home }: Account): string {
  const { at, position, alikeAt } = home
  if (position === undefined) return alikeAt ? `${at} / ${alikeAt.join(', ')}` : at
  const says = (text: string, part: string) => text.toLowerCase().includes(part.toLowerCase())
  const path = says(at, piece.name) || says(piece.name, at) ? [at] : [at, piece.name]
  return [...path, positionName(position)].join(' / ')
}
