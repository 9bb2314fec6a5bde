import type { Account } from '../../ledger/account.ts'
import { balance, type Holding, placesOf } from '../../ledger/ledger.ts'
import { isMatched } from '../../ledger/piece.ts'
import type { Place } from '../../ledger/place.ts'
import { owedAtHome } from '../../plan/contents.ts'
import { inSingular } from '../../trade/bag-line/name-words.ts'
import { partKinds } from '../../trade/inspection/part-kind.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { destination } from './containers.ts'
import { refuseTooEarly, riderMoves } from './leaving.ts'
import { matesOf } from './mates.ts'
import { newPieces } from './new-pieces.ts'
import { given, knownPiece, lawful, refuse, unknown, wholeCount } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** Moves pieces that are off the machine, or takes an aid out of it. Going home is a step's business. */
export function move(state: State, command: Of<'move'>): EntryBodyOf<'moved'> {
  const account = knownPiece(state, command.piece)
  const { piece } = account
  const { places, opened } = destination(state, command.into, null)
  const to = places[0] ?? refuse({ code: 'nothing-there', piece: piece.id })
  if (to === 'machine' && piece.kind !== 'aid')
    refuse({ code: 'through-a-step', piece: piece.id, step: piece.step })
  const lies = meant(
    placesOf(state.ledger, piece.id).filter(({ place }) => place !== to && movable(account, place)),
    command.from,
  )
  const from = lies[0] ?? refuse({ code: 'nothing-there', piece: piece.id })
  const count =
    command.count === undefined ? (lies.length === 1 ? from.count : null) : wholeCount(command.count)
  if (count === null) refuse({ code: 'which-place', piece: piece.id, lies })
  const moves = gather(lies, count).map((part) => ({
    piece: piece.id,
    count: part.count,
    from: part.place,
    to,
  }))
  const moved = moves.reduce((sum, part) => sum + part.count, 0)
  if (moved < count) refuse({ code: 'not-within-reach', piece: piece.id, wanted: count, there: moved, lies })
  refuseTooEarly(state, piece.id, to, command.reason)
  const needsReason = to === 'lost' || moves.some((part) => part.from === 'scrap')
  const reason = needsReason ? given(command.reason, 'reason') : command.reason
  return {
    type: 'moved',
    moves: lawful(state, [...riderMoves(state, piece.id, to, moved), ...moves]),
    reason,
    opened,
  }
}

/** New pieces arrive: for a short home the same piece, instead of an old one a successor that takes its home. */
export function supply(
  state: State,
  { piece, count, into, instead, size, named, borrowed }: Of<'supply'>,
): EntryBodyOf<'supplied'> {
  const old = knownPiece(state, piece)
  if (named !== undefined && isOtherKind(named, old.piece.name)) refuse({ code: 'other-kind', piece, named })
  const { places, opened } = destination(state, into, null)
  const arrived = newPieces(state, { piece, count, to: places[0] ?? 'bench', instead, size })
  return { type: 'supplied', ...arrived, opened, borrowed }
}

/** Two names of things that the trade's words, or their last word, tell apart. A pump may well be a water pump. */
function isOtherKind(one: string, other: string): boolean {
  const name = inSingular(one)
  const known = inSingular(other)
  if (name.endsWith(known) || known.endsWith(name)) return false
  const [kinds, others] = [partKinds(name), partKinds(known)]
  if (kinds.length > 0 && others.length > 0) return !kinds.some((kind) => others.includes(kind))
  return name.split(' ').at(-1) !== known.split(' ').at(-1)
}

/** Pieces are deliberately not put back: their home asks for that many fewer. */
export function leaveOff(
  state: State,
  { piece: id, count, reason }: Of<'leave-off'>,
): EntryBodyOf<'decided'> {
  const account = knownPiece(state, id)
  const owed = owedAtHome(state, account)
  const wanted = count === undefined ? owed : wholeCount(count)
  if (wanted > owed || owed <= 0) refuse({ code: 'too-many-left-off', piece: id, wanted, owed })
  return { type: 'decided', piece: id, what: 'left-off', count: wanted, reason: given(reason, 'reason') }
}

/** What is lost is accepted as lost, by a decision of its own. */
export function acceptLost(state: State, { piece: id, reason }: Of<'accept-lost'>): EntryBodyOf<'decided'> {
  knownPiece(state, id)
  const count = balance(state.ledger, id, 'lost') - (state.lostAccepted.get(id) ?? 0)
  if (count <= 0) refuse({ code: 'not-lost', piece: id })
  return { type: 'decided', piece: id, what: 'lost-accepted', count, reason: given(reason, 'reason') }
}

/** A single-use piece is fitted again, on the word and the reason of the user. */
export function useAgain(state: State, { piece: id, reason }: Of<'use-again'>): EntryBodyOf<'decided'> {
  const { should } = knownPiece(state, id)
  if (!state.used.has(id)) refuse({ code: 'not-single-use', piece: id })
  return {
    type: 'decided',
    piece: id,
    what: 'use-again',
    count: Math.max(1, should),
    reason: given(reason, 'reason'),
  }
}

/** Matched pieces change homes among themselves, or one takes a free one: only by a named decision. */
export function rehome(state: State, { homes, reason }: Of<'rehome'>): EntryBodyOf<'rehomed'> {
  const first = homes[0] ?? refuse({ code: 'text-missing', what: 'name' })
  const moving = new Map(homes.map(({ piece, position }) => [piece, position]))
  const mates = matesOf(state, knownPiece(state, first.piece))
  const known = mates.map(({ home }) => home.position ?? '')
  for (const { piece } of homes) {
    if (!isMatched(knownPiece(state, piece).piece)) refuse({ code: 'not-matched', piece })
  }
  for (const [id, position] of moving) {
    if (knownPiece(state, id).home.position === position) refuse({ code: 'home-taken', position, piece: id })
    // What the end of a hose goes to is known by the word that somebody gave it, and may have been given wrongly.
    const isNamed = knownPiece(state, id).piece.kind === 'connection' && position.trim() !== ''
    if (!known.includes(position) && !isNamed) refuse({ code: 'no-such-position', position, known })
    if (balance(state.ledger, id, 'machine') > 0) refuse({ code: 'already-fitted', piece: id })
    const holder = mates.find(
      (mate) => (moving.get(mate.piece.id) ?? mate.home.position) === position && mate.piece.id !== id,
    )
    if (holder) refuse({ code: 'home-taken', position, piece: holder.piece.id })
  }
  return { type: 'rehomed', homes, reason: given(reason, 'reason') }
}

/** What a broken piece left to do at its home is done. */
export function settleFault(state: State, { fault, how }: Of<'settle-fault'>): EntryBodyOf<'settled'> {
  const known = state.faults.get(fault) ?? unknown('fault', fault)
  if (known.settled !== null) refuse({ code: 'already', what: 'settled', id: fault })
  return { type: 'settled', fault, how: given(how, 'reason') }
}

/** Takes a count out of several places, in their order, until it is reached. */
export function gather<Lying extends { place: Place; count: number }>(
  lies: readonly Lying[],
  count: number,
): Lying[] {
  const parts: Lying[] = []
  let left = count
  for (const lying of lies) {
    if (left === 0) break
    const part = Math.min(left, lying.count)
    parts.push({ ...lying, count: part })
    left -= part
  }
  return parts
}

/** The places that a move takes from: what was scrapped or lost only when it is named, or is all there is. */
function meant(lies: Holding[], from: Place | undefined): Holding[] {
  if (from !== undefined) return lies.filter(({ place }) => place === from)
  const present = lies.filter(({ place }) => place !== 'scrap' && place !== 'lost')
  return present.length > 0 ? present : lies
}

/** Pieces on the machine are taken off by steps. */
function movable({ piece }: Account, place: Place): boolean {
  if (place === 'machine') return piece.kind === 'aid'
  return true
}
