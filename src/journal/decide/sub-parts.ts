import type { Account, Move } from '../../ledger/account.ts'
import { balance, placesOf } from '../../ledger/ledger.ts'
import { belongsInToolbox, type Piece, type PieceId } from '../../ledger/piece.ts'
import { carrierOf } from '../../ledger/place.ts'
import { withinReach } from '../../plan/contents.ts'
import { owedRiders } from '../../plan/riders.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { given, knownPiece, lawful, refuse, wholeCount } from './refuse.ts'
import { pieceId, refuseTaken, setName } from './strip.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>
type Item = Of<'carry'>['items'][number]

/** Sub-parts that sit on a piece become lines of their own: they go where it goes until they are taken off. */
export function carry(state: State, { on, items }: Of<'carry'>): EntryBodyOf<'carrying'> {
  const carrier = offTheMachine(state, on)
  // Nothing sits on what was missing from the start.
  if (placesOf(state.ledger, on).length === 0)
    refuse({ code: 'not-within-reach', piece: on, wanted: 1, there: 0, lies: [] })
  if (items.length === 0) given(undefined, 'name')
  const entered: { piece: Piece; found: number }[] = []
  for (const item of items) entered.push(...subParts(state, carrier, item, entered.length))
  const there = entered.filter(({ found }) => found > 0)
  return {
    type: 'carrying',
    on,
    pieces: entered.map(({ piece }) => piece),
    openings: entered.map(({ piece, found }) => ({ piece: piece.id, count: found, at: 'machine' })),
    moves: there.map(({ piece, found }) => ({ piece: piece.id, count: found, from: 'machine', to: on })),
  }
}

/** What sits on one piece goes over to another, each as a move of its own. */
export function moveOver(state: State, { from, to, pieces }: Of<'move-over'>): EntryBodyOf<'moved'> {
  const target = offTheMachine(state, to)
  if (withinReach(state, target).length === 0)
    refuse({ code: 'not-within-reach', piece: to, wanted: 1, there: 0, lies: [] })
  if (from !== undefined) knownPiece(state, from)
  const asked =
    pieces ?? (from === undefined ? [] : [...new Set(owedRiders(state, from).map(({ piece }) => piece))])
  const moves = asked.flatMap((piece) => overMoves(state, knownPiece(state, piece), from, to))
  if (moves.length === 0) refuse({ code: 'nothing-there', piece: asked[0] ?? from ?? to })
  return { type: 'moved', moves: lawful(state, moves) }
}

function overMoves(state: State, { piece }: Account, from: PieceId | undefined, to: PieceId): Move[] {
  if (belongsInToolbox(piece)) refuse({ code: 'not-for-home', piece: piece.id })
  if (state.used.has(piece.id)) refuse({ code: 'piece-used', piece: piece.id })
  return placesOf(state.ledger, piece.id)
    .filter(({ place }) => {
      if (place === 'machine' || place === to) return false
      if (from === undefined) return place === 'bench' || carrierOf(place) !== null || place.startsWith('c')
      return place === from
    })
    .map(({ place, count }): Move => ({ piece: piece.id, count, from: place, to }))
}

/** The account of a piece that others may sit on: it is part of the machine, and off it. */
function offTheMachine(state: State, id: PieceId): Account {
  const account = knownPiece(state, id)
  if (belongsInToolbox(account.piece)) refuse({ code: 'not-for-home', piece: id })
  if (balance(state.ledger, id, 'machine') > 0) refuse({ code: 'already-fitted', piece: id })
  return account
}

function subParts(
  state: State,
  { piece: carrier }: Account,
  item: Item,
  index: number,
): { piece: Piece; found: number }[] {
  const { kind, size, positions, singleUse, count } = item
  const name = given(item.name, 'name')
  const should = wholeCount(item.should ?? count)
  if (!Number.isInteger(count) || count < 0 || count > should) refuse({ code: 'count-wrong', count })
  const common = { kind, name, size, singleUse: singleUse || undefined, step: carrier.step }
  const at = carrier.name
  if (positions === undefined)
    return [{ piece: { id: pieceId(state, index), ...common, home: { at }, should }, found: count }]
  if (positions.length !== should || new Set(positions).size !== should || count !== should)
    refuse({ code: 'count-wrong', count })
  const set = setName(name, positions)
  return positions.map((position, each) => {
    refuseTaken(state, at, name, position)
    const id = pieceId(state, index + each)
    return { piece: { id, ...common, set, home: { at, position }, should: 1 }, found: 1 }
  })
}
