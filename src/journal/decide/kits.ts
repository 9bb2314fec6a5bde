import { isMatched, type PieceId } from '../../ledger/piece.ts'
import { shortageOf } from '../../plan/buying/short-pieces.ts'
import { heirs } from '../../plan/succession.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { arriveTogether, strangers } from './arrive.ts'
import { orderToCome } from './orders.ts'
import { given, knownPiece, refuse, wholeCount } from './refuse.ts'

interface Share {
  piece: PieceId
  count: number
  spare: number
}

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** A kit is counted in: what is owed goes to its homes, the rest is declared spare. One entry for all of it. */
export function countIn(state: State, command: Of<'count-in'>): EntryBodyOf<'supplied'> {
  const name = given(command.name, 'name')
  if (command.lines.length === 0) refuse({ code: 'text-missing', what: 'text' })
  const taken = new Map<PieceId, number>()
  const lines = command.lines.map((line) => shareOut(state, line, taken))
  const body = arriveTogether(state, together(lines.flatMap(({ arrivals }) => arrivals)), command.into)
  const dealt = { ...state.dealt, piece: state.dealt.piece + body.pieces.length }
  const others = strangers(
    { ...state, dealt },
    lines.flatMap(({ stranger }) => (stranger ? [stranger] : [])),
    `spare, from ${name}`,
  )
  const order = command.order
  if (order !== undefined) orderToCome(state, order)
  return {
    ...body,
    pieces: [...body.pieces, ...others.pieces],
    openings: [...body.openings, ...others.openings],
    moves: [...body.moves, ...others.moves],
    ...(order !== undefined && { order: { id: order, count: 1 } }),
    kit: { name, lines: lines.map(({ told }) => told) },
  }
}

/** Each piece of that name gets what its home lacks, in their order; what is left is spare. */
function shareOut(
  state: State,
  { pieces, name, count }: Of<'count-in'>['lines'][number],
  taken: Map<PieceId, number>,
) {
  let left = wholeCount(count)
  let short = 0
  const heirOf = heirs(state)
  const candidates = [...new Set(pieces.map(heirOf))]
  const arrivals: Share[] = []
  for (const piece of candidates) {
    const lacks = shortageOf(state, knownPiece(state, piece)).short - (taken.get(piece) ?? 0)
    const gets = Math.max(0, Math.min(left, lacks))
    short += Math.max(0, lacks - gets)
    if (gets === 0) continue
    taken.set(piece, (taken.get(piece) ?? 0) + gets)
    arrivals.push({ piece, count: gets, spare: 0 })
    left -= gets
  }
  const told = {
    name: given(name, 'name'),
    pieces: arrivals.map(({ piece }) => piece),
    count,
    spare: left,
    short,
  }
  const [first] = candidates
  // More of a lot in the record are spares of that lot.
  if (arrivals.length === 0 && first !== undefined && !isMatched(knownPiece(state, first).piece)) {
    arrivals.push({ piece: first, count: 0, spare: 0 })
  }
  const last = arrivals.at(-1)
  if (left > 0 && last) last.spare = left
  return { arrivals, told, stranger: left > 0 && !last ? { name, count: left } : null }
}

/** Two lines for one home are one arrival. */
function together(arrivals: readonly Share[]): Share[] {
  const byPiece = new Map<PieceId, Share>()
  for (const { piece, count, spare } of arrivals) {
    const before = byPiece.get(piece) ?? { piece, count: 0, spare: 0 }
    byPiece.set(piece, { piece, count: before.count + count, spare: before.spare + spare })
  }
  return [...byPiece.values()]
}
