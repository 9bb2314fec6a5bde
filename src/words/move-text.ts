import type { State } from '../journal/state.ts'
import type { Move } from '../ledger/account.ts'
import type { Home, Piece, PieceId } from '../ledger/piece.ts'
import type { Place } from '../ledger/place.ts'
import { countedName, positionsText } from './pieces.ts'
import { containerPlace, intoName, placeName } from './places.ts'

export interface MoveTelling {
  /** Pieces of the entry itself, for the state may not know them, and their homes may have changed since. */
  pieces?: readonly Piece[] | undefined
  /** Whether to tell where from and where to; both unless told otherwise. */
  from?: boolean | undefined
  to?: boolean | undefined
}

/** Moves as a list: `4 × valve cover bolts M6x25 from bag 1 into bag 2, cam cap I3 from bag 2 into bag 1`. */
export function movesText(state: State, moves: readonly Move[], telling: MoveTelling = {}): string {
  const { pieces, from = true, to = true } = telling
  const groups = new Map<string, Move[]>()
  for (const move of moves) {
    const way = [from ? roughly(move.from) : '', to ? roughly(move.to) : ''].join(' ')
    groups.set(way, [...(groups.get(way) ?? []), move])
  }
  return [...groups.values()]
    .map((group) => {
      const [first] = group
      if (!first) return ''
      const comes = from ? ` from ${oneOrWhole(state, group, 'from')}` : ''
      const goes = to ? `, ${intoName(state, commonPlace(group.map((move) => move.to)))}` : ''
      return `${piecesText(state, group, pieces)}${comes}${goes}`
    })
    .join('; ')
}

/** Pieces with their counts; those of one set are told together: `4 × cam caps I1, I2, I3, I4`. */
export function piecesText(
  state: State,
  counts: readonly { piece: PieceId; count: number; position?: string | undefined }[],
  pieces: readonly Piece[] = [],
): string {
  const alike = new Map<string, { piece: Piece; home: Home; count: number; positions: string[] }>()
  const unknown: string[] = []
  for (const { piece: id, count, position } of counts) {
    const own = pieces.find((piece) => piece.id === id)
    const account = state.ledger.accounts.get(id)
    const piece = own ?? account?.piece
    if (!piece) {
      unknown.push(`${count} × piece ${id}`)
      continue
    }
    const home = { ...(own?.home ?? account?.home ?? piece.home) }
    if (home.position !== undefined && position !== undefined) home.position = position
    const isOwn = home.position !== undefined
    const key = isOwn ? `${piece.set ?? piece.name} ${home.at} ${piece.size ?? ''}` : id
    const known = alike.get(key)
    if (known) {
      known.count += count
      if (home.position !== undefined) known.positions.push(home.position)
    } else {
      alike.set(key, { piece, home, count, positions: home.position === undefined ? [] : [home.position] })
    }
  }
  const known = [...alike.values()].map(({ piece, home, count, positions }) =>
    positions.length > 1
      ? `${countedName(piece, { at: home.at }, count)}${positionsText(piece, positions)}`
      : countedName(piece, home, count),
  )
  return [...known, ...unknown].join(', ')
}

function oneOrWhole(state: State, moves: readonly Move[], end: 'from' | 'to'): string {
  return placeName(state, commonPlace(moves.map((move) => move[end])))
}

/** A place without its slot, so that a set in a tray is told in one go. */
function roughly(place: Place): Place {
  const inside = containerPlace(place)
  return inside ? `c${inside.container}` : place
}

/** The one place of all, or the container that they share. */
function commonPlace(places: readonly Place[]): Place {
  const [first = 'bench'] = places
  return places.every((place) => place === first) ? first : roughly(first)
}
