import { holdingsAt, placesOf } from '../../ledger/ledger.ts'
import type { Piece } from '../../ledger/piece.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { given, knownPiece, lawful, refuse, wholeCount } from './refuse.ts'
import { pieceId } from './strip.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** Sub-parts that sit on a piece become lines of their own: they go where it goes until they are taken off. */
export function carry(state: State, { on, items }: Of<'carry'>): EntryBodyOf<'carrying'> {
  const carrier = knownPiece(state, on)
  const pieces = items.map(
    ({ kind, name, count, size, singleUse }, index): Piece => ({
      id: pieceId(state, index),
      kind,
      name: given(name, 'name'),
      home: { at: carrier.piece.name },
      should: wholeCount(count),
      size,
      singleUse: singleUse || undefined,
      step: carrier.piece.step,
    }),
  )
  return {
    type: 'carrying',
    on,
    pieces,
    openings: pieces.map(({ id, should }) => ({ piece: id, count: should, at: 'machine' })),
    moves: pieces.map(({ id, should }) => ({ piece: id, count: should, from: 'machine', to: on })),
  }
}

/** What sits on one piece goes over to another, each as a move of its own. */
export function moveOver(state: State, { from, to, pieces }: Of<'move-over'>): EntryBodyOf<'moved'> {
  knownPiece(state, from)
  knownPiece(state, to)
  const asked = pieces ?? holdingsAt(state.ledger, from).map(({ piece }) => piece)
  const moves = asked.flatMap((piece) =>
    placesOf(state.ledger, piece)
      .filter(({ place }) => place === from || (pieces !== undefined && place !== to))
      .map(({ place, count }) => ({ piece, count, from: place, to })),
  )
  const first = asked[0] ?? from
  if (moves.length === 0) refuse({ code: 'nothing-there', piece: first })
  return { type: 'moved', moves: lawful(state, moves) }
}
