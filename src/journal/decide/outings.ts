import type { Move } from '../../ledger/account.ts'
import { balance, holdingsAt } from '../../ledger/ledger.ts'
import { belongsInToolbox, type PieceId } from '../../ledger/piece.ts'
import { withinReach } from '../../plan/contents.ts'
import { outingsWith } from '../../plan/waiting/outings.ts'
import type { OutingFacts } from '../../plan/waiting/waiting-facts.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { destination } from './containers.ts'
import { dayToCome } from './dates.ts'
import { given, knownPiece, lawful, refuse, unknown, wholeCount } from './refuse.ts'
import { gather } from './supply.ts'
import { takenOutThere } from './taken-out-there.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** Pieces go out of the house, to a shop or on loan, together. What sits on them goes along where it is not left aside. */
export function sendOut(state: State, command: Of<'send-out'>): EntryBodyOf<'sent-out'> {
  const { why, due, expects, aside = [], job, pieces } = command
  const to = given(command.to, 'name')
  if (pieces.length === 0) refuse({ code: 'text-missing', what: 'name' })
  if (due !== undefined) dayToCome(state, due)
  const going = pieces.map(({ piece }) => piece)
  const off = aside.flatMap((piece) => leftHere(state, piece, going))
  const moves = pieces.flatMap((each) => outward(state, each))
  return {
    type: 'sent-out',
    outing: {
      id: `b${state.dealt.outing + 1}`,
      to,
      why: why?.trim() || undefined,
      due,
      expects: expects?.trim() || undefined,
      job,
      since: state.clock.today,
      pieces: totals(moves),
      aside: [...new Set(aside)],
    },
    moves: lawful(state, [...off, ...moves]),
  }
}

/** Pieces come back, or somebody says what the shop took out, or both. */
export function comeBack(state: State, command: Of<'come-back'>): EntryBodyOf<'came-back'> {
  const outing = meantOuting(state, command)
  const { tookOut } = command
  const asked = command.pieces ?? stillAway(outing)
  const counts = asked.map(({ piece, count }) => ({ piece, count: countBack(state, outing, piece, count) }))
  // Said once more about what is back, it can only be the answer that was still open.
  if (counts.length === 0 && tookOut === undefined && command.result === undefined)
    refuse({ code: 'back-already', outing: outing.id, piece: null })
  const { places, opened } = destination(state, command.into, isApart(state, asked) ? asked.length : null)
  for (const place of places) {
    if (place === 'machine' && asked[0]) throughStep(state, asked[0].piece)
    if (place === 'lost') refuse({ code: 'text-missing', what: 'reason' })
  }
  const back = counts.map(
    ({ piece, count }, index): Move => ({
      piece,
      count,
      from: 'out',
      to: places[index] ?? places[0] ?? 'bench',
    }),
  )
  const taken = tookOut && takenOutThere(state, outing, tookOut.items, back)
  return {
    type: 'came-back',
    outing: outing.id,
    pieces: taken?.pieces ?? [],
    openings: taken?.openings ?? [],
    moves: [...lawful(state, [...back, ...(taken?.known ?? [])]), ...(taken?.entering ?? [])],
    tookOut: tookOut && { text: given(tookOut.text, 'text'), pieces: taken?.named ?? [] },
    result: command.result?.trim() || undefined,
    opened: counts.length > 0 ? opened : undefined,
  }
}

/** What of a piece lies within reach goes out, or so many of it. */
function outward(state: State, { piece: id, count }: { piece: PieceId; count?: number | undefined }): Move[] {
  const account = knownPiece(state, id)
  if (count !== undefined) wholeCount(count)
  const lies = withinReach(state, account)
  const there = lies.reduce((sum, each) => sum + each.count, 0)
  const wanted = count ?? there
  if (there === 0) refuseAway(state, id, count ?? Math.max(1, account.should))
  if (there < wanted) refuse({ code: 'not-within-reach', piece: id, wanted, there, lies })
  return gather(lies, wanted).map((part) => ({ piece: id, count: part.count, from: part.place, to: 'out' }))
}

/** Nothing of a piece is at hand: says where it is instead. */
function refuseAway(state: State, id: PieceId, wanted: number): never {
  const { piece } = knownPiece(state, id)
  if (balance(state.ledger, id, 'out') > 0)
    refuse({ code: 'out-already', piece: id, outing: outingsWith(state, id)[0]?.id ?? null })
  if (balance(state.ledger, id, 'machine') > 0)
    refuse(
      belongsInToolbox(piece) ? { code: 'not-for-home', piece: id } : { code: 'already-fitted', piece: id },
    )
  refuse({ code: 'not-within-reach', piece: id, wanted, there: 0, lies: [] })
}

/** What sits on a piece that goes out is taken off and stays on the bench; what is off already stays where it is. */
function leftHere(state: State, id: PieceId, going: readonly PieceId[]): Move[] {
  const account = knownPiece(state, id)
  if (going.includes(id)) refuse({ code: 'goes-and-stays', piece: id })
  const moves = going.flatMap((on) =>
    holdingsAt(state.ledger, on)
      .filter(({ piece }) => piece === id)
      .map(({ count }): Move => ({ piece: id, count, from: on, to: 'bench' })),
  )
  if (moves.length === 0 && withinReach(state, account).length === 0) refuseAway(state, id, 1)
  return moves
}

function meantOuting(state: State, { outing: id, pieces = [] }: Of<'come-back'>): OutingFacts {
  if (id !== undefined) return state.outings.get(id) ?? unknown('outing', id)
  const first = pieces[0]?.piece ?? refuse({ code: 'text-missing', what: 'name' })
  knownPiece(state, first)
  const [outing] = outingsWith(state, first)
  if (outing) return outing
  const before = [...state.outings.values()].findLast((each) =>
    each.pieces.some(({ piece }) => piece === first),
  )
  if (before) refuse({ code: 'back-already', outing: before.id, piece: first })
  refuse({ code: 'not-out', piece: first, outing: null })
}

function stillAway({ pieces }: OutingFacts): { piece: PieceId; count: number }[] {
  return pieces.filter(({ away }) => away > 0).map(({ piece, away }) => ({ piece, count: away }))
}

/** How many of a piece come back: never more than are away. */
function countBack(state: State, outing: OutingFacts, piece: PieceId, count: number | undefined): number {
  knownPiece(state, piece)
  const line = outing.pieces.find((each) => each.piece === piece)
  if (!line) refuse({ code: 'not-out', piece, outing: outing.id })
  if (line.away === 0) refuse({ code: 'back-already', outing: outing.id, piece })
  const wanted = count === undefined ? line.away : wholeCount(count)
  if (wanted > line.away) refuse({ code: 'too-many-back', outing: outing.id, piece, away: line.away, wanted })
  return wanted
}

/** Whether each piece has a home of its own, so that each takes a slot of its own in a tray. */
function isApart(state: State, pieces: readonly { piece: PieceId }[]): boolean {
  return (
    pieces.length > 0 && pieces.every(({ piece }) => knownPiece(state, piece).home.position !== undefined)
  )
}

function throughStep(state: State, id: PieceId): never {
  refuse({ code: 'through-a-step', piece: id, step: knownPiece(state, id).piece.step })
}

function totals(moves: readonly Move[]): { piece: PieceId; count: number }[] {
  const by = new Map<PieceId, number>()
  for (const { piece, count } of moves) by.set(piece, (by.get(piece) ?? 0) + count)
  return [...by].map(([piece, count]) => ({ piece, count }))
}
