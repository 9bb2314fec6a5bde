import type { Account, Move, Opening } from '../../ledger/account.ts'
import { balance } from '../../ledger/ledger.ts'
import { isMatched, type Piece, type PieceId } from '../../ledger/piece.ts'
import { shortageOf } from '../../plan/buying/short-pieces.ts'
import type { Into } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { destination } from './containers.ts'
import { knownPiece, refuse } from './refuse.ts'
import { pieceId } from './strip.ts'
import { supply } from './supply.ts'

type Supplied = EntryBodyOf<'supplied'>

/** What arrives for the home of a piece. `count`: for the home; `spare`: beyond that, as spares. */
export interface Arrival {
  piece: PieceId
  count: number
  spare: number
  into: Into
  size?: string | undefined
}

/**
 * New pieces for a home, and what is beyond it declared spare. Where the home takes one only, all others are spares. The
 * new take the place of the old where these cannot go back, and single parts always: nobody buys a second one to keep both.
 */
export function arrive(state: State, { piece: id, count, spare, into, size }: Arrival): Supplied {
  const account = knownPiece(state, id)
  const isSingle = account.should === 1
  const forHome = isSingle ? Math.min(count, homeTakes(state, account)) : count
  const left = count - forHome + spare
  const body =
    forHome === 0
      ? nothingNew()
      : supply(state, {
          do: 'supply',
          piece: id,
          count: forHome,
          into,
          instead: isInstead(state, account, size),
          size,
        })
  return left === 0 ? body : withSpares(state, body, account.piece, left)
}

/** The same in one entry for several, each worked out on what the ones before it came to. */
export function arriveTogether(
  state: State,
  arrivals: readonly Omit<Arrival, 'into'>[],
  into: Into,
): Supplied {
  const { places, opened } = destination(state, into, null)
  const to = places[0] ?? 'bench'
  const [first] = arrivals
  if (to === 'machine' && first) {
    const { piece } = knownPiece(state, first.piece)
    refuse({ code: 'through-a-step', piece: piece.id, step: piece.step })
  }
  const whole = nothingNew()
  for (const arrival of arrivals) {
    const dealt = { ...state.dealt, piece: state.dealt.piece + whole.pieces.length }
    const one = arrive({ ...state, dealt }, { ...arrival, into: { kind: 'place', place: 'bench' } })
    whole.pieces.push(...one.pieces)
    whole.openings.push(...one.openings)
    const moves = one.moves.map((move) => (move.to === 'bench' ? { ...move, to } : move))
    // What is said to stay at its supplier goes nowhere.
    whole.moves.push(...moves.filter((move) => move.from !== move.to))
    whole.retired.push(...one.retired)
    if (one.compare) whole.compare = [...(whole.compare ?? []), ...one.compare]
  }
  return { ...whole, opened }
}

/** Spares of a thing that has no home in the record. */
export function strangers(
  state: State,
  names: readonly { name: string; count: number }[],
  from: string,
): Supplied {
  const body = nothingNew()
  for (const { name, count } of names) {
    const dealt = { ...state.dealt, piece: state.dealt.piece + body.pieces.length }
    addSpare(body, count, {
      id: pieceId({ ...state, dealt }),
      kind: 'part',
      name,
      home: { at: from },
      should: 0,
      step: anyStep(state),
    })
  }
  return body
}

function nothingNew(): Supplied {
  return { type: 'supplied', pieces: [], openings: [], moves: [], retired: [] }
}

/** How many of what arrives a home of one can take: none while a good new one is there or waits to go there. */
function homeTakes(state: State, account: Account): number {
  return shortageOf(state, account).short > 0 || isOldOne(state, account) ? 1 : 0
}

/** A single part that came off, and for which somebody bought a new one all the same. */
function isOldOne(state: State, { piece, should, entered }: Account): boolean {
  const isOff = balance(state.ledger, piece.id, 'machine') === 0
  const cameOff = piece.replaces === undefined && entered > 0
  return isOff && cameOff && should === 1 && piece.kind === 'part' && !isMatched(piece)
}

function isInstead(state: State, account: Account, size: string | undefined): boolean {
  const { piece, entered } = account
  const { parts } = shortageOf(state, account)
  const isUnfit = parts.some(({ why }) => why === 'replace' || why === 'wrong')
  const isSecond = parts.length === 0 && isOldOne(state, account)
  return isUnfit || isSecond || size !== undefined || (isMatched(piece) && entered > 0)
}

/** Spares of common pieces are more of the same lot; one with a home of its own leaves no room for a second. */
function withSpares(state: State, body: Supplied, old: Piece, count: number): Supplied {
  const [successor] = body.pieces
  const lot = successor ?? old
  if (isMatched(lot)) {
    const dealt = { ...state.dealt, piece: state.dealt.piece + body.pieces.length }
    const { position: _, ...home } = lot.home
    const { set: __, replaces: ___, ...rest } = lot
    addSpare(body, count, { ...rest, id: pieceId({ ...state, dealt }), home, should: 0 })
    return body
  }
  const opening: Opening = { piece: lot.id, count, at: 'supplier' }
  const move: Move = { piece: lot.id, count, from: 'supplier', to: 'spare' }
  return { ...body, openings: [...body.openings, opening], moves: [...body.moves, move] }
}

function addSpare(body: Supplied, count: number, piece: Piece): void {
  body.pieces.push(piece)
  body.openings.push({ piece: piece.id, count, at: 'supplier' })
  body.moves.push({ piece: piece.id, count, from: 'supplier', to: 'spare' })
}

function anyStep(state: State): number {
  return state.build ?? state.strip ?? [...state.steps.keys()][0] ?? 1
}
