import type { Account, Move } from '../../ledger/account.ts'
import { balance } from '../../ledger/ledger.ts'
import { belongsInToolbox, isMatched, type PieceId } from '../../ledger/piece.ts'
import { hereOf, openOf, partNotesOf } from '../../plan/buying/order-lines.ts'
import { withinReach } from '../../plan/contents.ts'
import { heirs } from '../../plan/succession.ts'
import type { OrderFacts, OrderId } from '../../plan/waiting/waiting-facts.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { arrive } from './arrive.ts'
import { dayToCome } from './dates.ts'
import { given, knownPiece, lawful, refuse, unknown, wholeCount } from './refuse.ts'
import { gather } from './supply.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** Lines of what is wanted, or ordered at once. What is known about buying a piece goes along. */
export function lineOrders(state: State, { lines, ordered }: Of<'line-orders'>): EntryBodyOf<'order-lined'> {
  if (lines.length === 0) refuse({ code: 'text-missing', what: 'name' })
  return {
    type: 'order-lined',
    since: state.clock.today,
    orders: lines.map(({ piece, ...line }, index) => {
      if (line.due !== undefined) dayToCome(state, line.due)
      const known = piece === undefined ? {} : partNotesOf(state, forHome(state, piece))
      return {
        id: `o${state.dealt.order + 1 + index}`,
        name: given(line.name, 'name'),
        piece,
        count: amountOf(line, piece),
        unit: line.unit,
        size: line.size,
        due: line.due,
        ordered,
        partNo: line.partNo ?? known.partNo,
        price: line.price ?? known.price,
        source: line.source ?? known.source,
      }
    }),
  }
}

/** A line gets other facts, is ordered, or is cancelled. What arrived stays. */
export function changeOrder(
  state: State,
  { do: _, ...changes }: Of<'change-order'>,
): EntryBodyOf<'order-changed'> {
  const { order: id, count, due, cancelled } = changes
  const order = inForce(state, id)
  if (due !== undefined) dayToCome(state, due)
  if (cancelled !== undefined && openOf(order) === 0) refuse({ code: 'order-arrived', order: id })
  if (count !== undefined && amountOf({ count }, order.piece) < hereOf(order)) {
    refuse({ code: 'order-arrived', order: id })
  }
  return {
    type: 'order-changed',
    ...changes,
    ...(cancelled !== undefined && { cancelled: given(cancelled, 'reason') }),
    ...(changes.ordered && !order.ordered && { since: state.clock.today }),
  }
}

/** What was ordered arrives: pieces as new ones for their home, all else as arrived. */
export function receive(state: State, command: Of<'receive'>): EntryBodyOf<'supplied'> {
  const { order: id, spare = 0, into } = command
  const order = inForce(state, id)
  const size = command.size ?? order.size
  const open = openOf(order)
  // What came beyond all that was ordered may stay as spares.
  if (open === 0 && (command.count === undefined || spare < command.count)) stillToCome(order)
  const count = amountOf({ count: command.count ?? open }, order.piece)
  if (spare !== 0) wholeCount(spare)
  const ofOrder = count - spare
  if (ofOrder < 0) refuse({ code: 'count-wrong', count: spare })
  if (ofOrder > open) refuse({ code: 'more-than-ordered', order: id, open, arrived: count })
  const { piece } = order
  const supplied =
    piece === undefined
      ? { type: 'supplied' as const, pieces: [], openings: [], moves: [], retired: [] }
      : arrive(state, { piece: heirs(state)(piece), count: ofOrder, spare, into, size })
  return { ...supplied, order: { id, count } }
}

/** What arrived goes back where it came from: all that is wrong, else all that is here, when no number is said. */
export function returnOrder(
  state: State,
  { order: id, count, reason }: Of<'return-order'>,
): EntryBodyOf<'order-returned'> {
  const order = state.orders.get(id) ?? unknown('order', id)
  const here = hereOf(order)
  const back = amountOf({ count: count ?? (order.wrong > 0 ? order.wrong : Math.max(here, 1)) }, order.piece)
  if (back > here) refuse({ code: 'more-than-arrived', order: id, here, wanted: back })
  return {
    type: 'order-returned',
    order: id,
    count: back,
    reason: given(reason, 'reason'),
    moves: order.piece === undefined ? [] : lawful(state, backToSupplier(state, order, order.piece, back)),
  }
}

/** What the user knows about buying a piece. */
export function notePart(state: State, { do: _, ...notes }: Of<'note-part'>): EntryBodyOf<'part-noted'> {
  forHome(state, notes.piece)
  const { partNo, price, source } = notes
  if (partNo === undefined && price === undefined && source === undefined) {
    refuse({ code: 'text-missing', what: 'text' })
  }
  return { type: 'part-noted', ...notes }
}

/** Bought is what goes home: a piece that belongs on the machine, or that has taken the place of one. */
function forHome(state: State, id: PieceId): PieceId {
  const heir = heirs(state)(knownPiece(state, id).piece.id)
  const { piece, should } = knownPiece(state, heir)
  if (belongsInToolbox(piece) || should === 0) refuse({ code: 'not-for-home', piece: id })
  return heir
}

/** What came by the line goes back, and never what came by another, though that has the home by now. */
function backToSupplier(state: State, order: OrderFacts, ordered: PieceId, count: number): Move[] {
  const accounts = cameBy(state, order.id, ordered).map((id) => knownPiece(state, id))
  const there = accounts.flatMap((account) =>
    sparesFirst(account, withinReach(state, account)).map((lying) => ({ ...lying, piece: account.piece.id })),
  )
  const near = there.reduce((sum, lying) => sum + lying.count, 0)
  if (near < count) {
    const id = accounts[0]?.piece.id ?? ordered
    if (near === 0 && balance(state.ledger, id, 'machine') > 0) refuse({ code: 'already-fitted', piece: id })
    refuse({ code: 'not-within-reach', piece: id, wanted: count, there: near, lies: there })
  }
  return gather(there, count).map(({ piece, place, count: part }) => ({
    piece,
    count: part,
    from: place,
    to: 'supplier' as const,
  }))
}

/** The pieces that a line brought, the wrong ones first; more of a lot that was there before is no piece of its own. */
function cameBy(state: State, order: OrderId, ordered: PieceId): PieceId[] {
  const heir = heirs(state)(ordered)
  const own = [...state.comparisons.values()].filter((comparison) => comparison.order === order)
  const isOther = (state.comparisons.get(heir)?.order ?? order) !== order
  const wrongFirst = own.toSorted((a, b) => Number(b.verdict === 'wrong') - Number(a.verdict === 'wrong'))
  const pieces = [...wrongFirst.map(({ piece }) => piece), ...(isOther && own.length > 0 ? [] : [heir])]
  return [...new Set(pieces)]
}

/** What is surplus goes back before what a home waits for. */
function sparesFirst<Lying extends { place: string }>(account: Account, lies: readonly Lying[]): Lying[] {
  if (isMatched(account.piece)) return [...lies]
  return [...lies].sort((a, b) => Number(b.place === 'spare') - Number(a.place === 'spare'))
}

/** Pieces are whole; litres and tubes need not be. */
function amountOf({ count }: { count: number }, piece: PieceId | undefined): number {
  if (piece !== undefined) return wholeCount(count)
  return count > 0 && count <= 9999 ? count : refuse({ code: 'count-wrong', count })
}

/** A line that is still to come is refused where it was cancelled, or is here already: another hand was quicker. */
export function orderToCome(state: State, id: OrderId): OrderFacts {
  return stillToCome(inForce(state, id))
}

function stillToCome(order: OrderFacts): OrderFacts {
  return openOf(order) > 0 ? order : refuse({ code: 'order-arrived', order: order.id })
}

function inForce(state: State, id: OrderId): OrderFacts {
  const order = state.orders.get(id) ?? unknown('order', id)
  if (order.cancelled !== null) refuse({ code: 'order-cancelled', order: id })
  return order
}
