import type { Move, Opening } from '../../ledger/account.ts'
import { holdingsIn, placesOf } from '../../ledger/ledger.ts'
import type { Piece, PieceId } from '../../ledger/piece.ts'
import { containerOf, inContainer, type Place, slotOf } from '../../ledger/place.ts'
import type { Lying } from '../../plan/contents.ts'
import type { DifferenceFacts } from '../../plan/facts.ts'
import type { Command, Explanation, Into } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { destination } from './containers.ts'
import { given, knownContainer, knownPiece, lawful, refuse, unknown } from './refuse.ts'
import { pieceId } from './strip.ts'
import { gather } from './supply.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** A blind recount: every piece that should be there needs its number, and too many is as wrong as too few. */
export function count(state: State, { container, counts }: Of<'count'>): EntryBodyOf<'counted'> {
  knownContainer(state, container)
  const expected = new Map<PieceId | null, number>()
  for (const { piece, count: there } of holdingsIn(state.ledger, container)) {
    expected.set(piece, (expected.get(piece) ?? 0) + there)
  }
  // A piece in several slots may be counted slot by slot: its numbers add up.
  const given = new Map<PieceId | null, number>()
  for (const { piece, counted } of counts) {
    if (!Number.isInteger(counted) || counted < 0 || counted > 9999)
      refuse({ code: 'count-wrong', count: counted })
    given.set(piece, (given.get(piece) ?? 0) + counted)
  }
  const uncounted = [...expected.keys()].filter(
    (piece): piece is PieceId => piece !== null && !given.has(piece),
  )
  if (uncounted.length > 0 || given.size === 0)
    refuse({ code: 'count-by-piece', container, pieces: uncounted })
  let differences = 0
  const lines = [...given].map(([piece, counted]) => {
    if (counted > 9999) refuse({ code: 'count-wrong', count: counted })
    if (piece !== null) knownPiece(state, piece)
    const there = expected.get(piece) ?? 0
    if (there === counted) return { piece, expected: there, counted }
    differences += 1
    return {
      piece,
      expected: there,
      counted,
      difference: `d${state.dealt.difference + differences}` as const,
    }
  })
  return { type: 'counted', container, lines }
}

/** Explains a count that did not agree, with the moves that put the ledger right. */
export function explain(
  state: State,
  { difference: id, how, reason }: Of<'explain'>,
): EntryBodyOf<'explained'> {
  const difference = state.differences.get(id) ?? unknown('difference', id)
  if (difference.settled !== null) refuse({ code: 'already', what: 'settled', id })
  const over = difference.counted - difference.expected
  const base = {
    type: 'explained' as const,
    difference: id,
    pieces: [] as Piece[],
    openings: [] as Opening[],
    reason: given(reason, 'reason'),
  }
  if (how.kind === 'missing') {
    if (over > 0 || difference.piece === null)
      refuse({ code: 'explains-nothing', difference: id, kind: 'missing', over })
    return {
      ...base,
      how: 'missing',
      moves: lawful(state, outOf(state, difference, difference.piece, -over, 'lost')),
    }
  }
  if (how.kind === 'unknown-piece') {
    if (over < 0) refuse({ code: 'explains-nothing', difference: id, kind: 'unknown-piece', over })
    const stray = strayPiece(state, difference.container, given(how.name, 'name'))
    const place = foundAt(state, difference.container)
    return {
      ...base,
      how: 'unknown-piece',
      pieces: [stray],
      openings: [{ piece: stray.id, count: over, at: 'machine' }],
      moves: [{ piece: stray.id, count: over, from: 'machine', to: place }],
    }
  }
  return { ...base, how: 'moved', ...wandered(state, difference, how) }
}

/** The pieces of a difference went to another place, or came from there. */
function wandered(
  state: State,
  difference: DifferenceFacts,
  { piece: id, other }: Extract<Explanation, { kind: 'moved' }>,
): Pick<EntryBodyOf<'explained'>, 'moves' | 'opened'> {
  const { piece } = knownPiece(state, id)
  const over = difference.counted - difference.expected
  // Another piece that moved leaves the count of this one as wrong as it was.
  if (difference.piece !== null && difference.piece !== id)
    refuse({ code: 'explains-nothing', difference: difference.id, kind: 'moved', over })
  // What was recorded as fitted may turn up in its bag; what is short in a bag is not fitted by saying so.
  if (over < 0 && other.kind === 'place' && other.place === 'machine' && piece.kind !== 'aid')
    refuse({ code: 'through-a-step', piece: id, step: piece.step })
  if (over > 0) {
    const lies = placesOf(state.ledger, id).filter(({ place }) => isMeant(state, other, place))
    const to = lainAt(state, difference.container, id) ?? foundAt(state, difference.container)
    return { moves: lawful(state, carry(id, over, lies, to)) }
  }
  const { places, opened } = destination(state, other, null)
  return { moves: lawful(state, outOf(state, difference, id, -over, places[0] ?? 'bench')), opened }
}

function outOf(
  state: State,
  { container }: DifferenceFacts,
  piece: PieceId,
  number: number,
  to: Place,
): Move[] {
  const lies = holdingsIn(state.ledger, container).filter((holding) => holding.piece === piece)
  return carry(piece, number, lies, to)
}

function carry(piece: PieceId, wanted: number, lies: Lying[], to: Place): Move[] {
  const there = lies.reduce((sum, { count: part }) => sum + part, 0)
  if (there < wanted) refuse({ code: 'not-within-reach', piece, wanted, there, lies })
  return gather(lies, wanted).map(({ place, count: part }) => ({ piece, count: part, from: place, to }))
}

/** Whether a place is the one that the user names as where the pieces were. */
function isMeant(state: State, into: Into, place: Place): boolean {
  if (into.kind === 'place') return place === into.place
  const no = into.kind === 'container' ? into.no : into.kind === 'hand' ? state.hand : null
  const slot = into.kind === 'container' ? into.slot : undefined
  return containerOf(place) === no && no !== null && (slot === undefined || slotOf(place) === slot)
}

/** A piece that never left its slot is in that slot, where nothing else has come into it since. */
function lainAt(state: State, container: number, piece: PieceId): Place | null {
  const { from } = state.takenFrom.get(container)?.get(piece) ?? {}
  const isFree = from !== undefined && slotOf(from) !== null && !state.ledger.byPlace.get(from)?.size
  return isFree && state.containers.get(container)?.voided === null ? from : null
}

/** What was found in a container stays there, or lies on the bench once its label is void. */
function foundAt(state: State, container: number): Place {
  if (state.containers.get(container)?.voided) return 'bench'
  return destination(state, { kind: 'container', no: container }, null).places[0] ?? inContainer(container)
}

/** A piece that nobody knows: it belongs nowhere, so it stays a leftover until somebody says what it is. */
function strayPiece(state: State, container: number, name: string): Piece {
  const step = state.build ?? state.strip ?? [...state.steps.keys()].at(-1) ?? 1
  return {
    id: pieceId(state),
    kind: 'part',
    name,
    home: { at: `unknown, found in ${container}` },
    should: 0,
    step,
  }
}
