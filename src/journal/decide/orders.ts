import type { OrderFacts, OrderId } from '../../plan/waiting-facts.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { given, knownPiece, refuse, unknown } from './refuse.ts'
import { supply } from './supply.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** Lines of what is wanted, or ordered at once. */
export function lineOrders(state: State, { lines, ordered }: Of<'line-orders'>): EntryBodyOf<'order-lined'> {
  if (lines.length === 0) refuse({ code: 'text-missing', what: 'name' })
  return {
    type: 'order-lined',
    since: state.clock.today,
    orders: lines.map((line, index) => {
      if (line.piece !== undefined) knownPiece(state, line.piece)
      return { ...line, id: `o${state.dealt.order + 1 + index}`, name: given(line.name, 'name'), ordered }
    }),
  }
}

/** A line gets other facts, is ordered, or is cancelled. */
export function changeOrder(
  state: State,
  { do: _, ...changes }: Of<'change-order'>,
): EntryBodyOf<'order-changed'> {
  knownOrder(state, changes.order)
  return { type: 'order-changed', ...changes, ...(changes.ordered && { since: state.clock.today }) }
}

/** What was ordered arrives: pieces as new ones for their home, all else as arrived. */
export function receive(
  state: State,
  { order: id, count, into, size }: Of<'receive'>,
): EntryBodyOf<'supplied'> {
  const line = knownOrder(state, id)
  const arrived = count ?? line.count - line.arrived
  if (line.piece === undefined)
    return {
      type: 'supplied',
      pieces: [],
      openings: [],
      moves: [],
      retired: [],
      order: { id, count: arrived },
    }
  const supplied = supply(state, {
    do: 'supply',
    piece: line.piece,
    count: arrived,
    into,
    instead: false,
    size,
  })
  return { ...supplied, order: { id, count: arrived } }
}

/** What arrived goes back. */
export function returnOrder(
  state: State,
  { order: id, count, reason }: Of<'return-order'>,
): EntryBodyOf<'order-returned'> {
  const line = knownOrder(state, id)
  return {
    type: 'order-returned',
    order: id,
    count: count ?? line.wrong,
    reason: given(reason, 'reason'),
    moves: [],
  }
}

/** What the user knows about buying a piece. */
export function notePart(state: State, { do: _, ...notes }: Of<'note-part'>): EntryBodyOf<'part-noted'> {
  knownPiece(state, notes.piece)
  return { type: 'part-noted', ...notes }
}

function knownOrder(state: State, id: OrderId): OrderFacts {
  return state.orders.get(id) ?? unknown('order', id)
}
