import { accountOf } from '../../ledger/ledger.ts'
import type { OrderFacts, OutingFacts } from '../../plan/waiting-facts.ts'
import type { EntryOf } from '../entry.ts'
import type { State } from '../state.ts'
import { carry, enterPieces, stepOf } from './moves.ts'

type WaitingEntry =
  | 'order-lined'
  | 'order-changed'
  | 'order-returned'
  | 'part-noted'
  | 'sent-out'
  | 'came-back'
  | 'consumable-set'
  | 'consumable-dropped'
  | 'applied'
  | 'seen-again'

/** What follows from orders, from what is out of the house, from what is put on and what is seen twice. */
export const waitingAppliers: { [Type in WaitingEntry]: (state: State, entry: EntryOf<Type>) => void } = {
  'order-lined': (state, { orders, since }) => {
    for (const line of orders) {
      if (line.piece !== undefined) accountOf(state.ledger, line.piece)
      state.orders.set(line.id, {
        ...line,
        since: line.ordered ? since : null,
        arrived: 0,
        wrong: 0,
        returned: 0,
        cancelled: null,
      })
    }
  },
  'order-changed': (state, { order, ordered, since, count, due, cancelled, partNo, price, source }) => {
    const line = orderOf(state, order)
    if (ordered) {
      line.ordered = true
      line.since = since ?? line.since
    }
    if (count !== undefined) line.count = count
    if (due !== undefined) line.due = due
    if (cancelled !== undefined) line.cancelled = cancelled
    if (partNo !== undefined) line.partNo = partNo
    if (price !== undefined) line.price = price
    if (source !== undefined) line.source = source
  },
  'order-returned': (state, { order, count, moves }) => {
    const line = orderOf(state, order)
    carry(state, moves)
    line.returned += count
    line.wrong = Math.max(0, line.wrong - count)
  },
  'part-noted': (state, { piece, partNo, price, source }) => {
    accountOf(state.ledger, piece)
    const known = state.partNotes.get(piece) ?? {}
    state.partNotes.set(piece, {
      ...known,
      ...(partNo !== undefined && { partNo }),
      ...(price !== undefined && { price }),
      ...(source !== undefined && { source }),
    })
  },

  'sent-out': (state, { outing: { pieces, ...outing }, moves }) => {
    state.outings.set(outing.id, {
      ...outing,
      aside: [...outing.aside],
      pieces: pieces.map((each) => ({ ...each, away: each.count })),
      tookOut: null,
    })
    carry(state, moves)
  },
  'came-back': (state, { outing: id, pieces, openings, moves, tookOut, result }) => {
    const outing = state.outings.get(id)
    if (!outing) throw new Error(`nothing went out as ${id}`)
    for (const { piece, from, count } of moves) if (from === 'out') bringBack(outing, piece, count)
    enterPieces(state, pieces, openings)
    carry(state, moves)
    // Taken out there, and not brought along.
    for (const { piece, to, count } of moves) if (to === 'out') stayAway(outing, piece, count)
    if (tookOut) {
      const text = outing.tookOut === null ? tookOut.text : `${outing.tookOut.text}; ${tookOut.text}`
      outing.tookOut = { text, pieces: [...(outing.tookOut?.pieces ?? []), ...tookOut.pieces] }
    }
    if (result !== undefined) outing.result = result
  },

  'consumable-set': (state, { consumable }) => {
    stepOf(state, consumable.step)
    state.consumables.set(consumable.id, { ...consumable, before: [...consumable.before], applied: null })
  },
  'consumable-dropped': (state, { consumable }) => {
    if (!state.consumables.delete(consumable)) throw new Error(`nothing is put on as ${consumable}`)
  },
  applied: (state, { n, at, consumable: id }) => {
    const consumable = state.consumables.get(id)
    if (!consumable) throw new Error(`nothing is put on as ${id}`)
    consumable.applied = { n, at }
  },

  'seen-again': (state, { step, line, by, at, says }) => {
    stepOf(state, step)
    const seen = state.secondLooks.get(step) ?? []
    state.secondLooks.set(step, [...seen.filter((each) => each.line !== line), { line, by, at, says }])
  },
}

/** What arrived is noted with the line that it was ordered by. */
export function noteArrival(state: State, { order }: EntryOf<'supplied'>): void {
  if (order) orderOf(state, order.id).arrived += order.count
}

function bringBack(outing: OutingFacts, piece: string, count: number): void {
  const line = outing.pieces.find((each) => each.piece === piece)
  if (line) line.away = Math.max(0, line.away - count)
}

function stayAway(outing: OutingFacts, piece: OutingFacts['pieces'][number]['piece'], count: number): void {
  const line = outing.pieces.find((each) => each.piece === piece)
  if (!line) outing.pieces.push({ piece, count, away: count })
  else {
    line.count += count
    line.away += count
  }
}

function orderOf(state: State, id: OrderFacts['id']): OrderFacts {
  const line = state.orders.get(id)
  if (!line) throw new Error(`no order ${id}`)
  return line
}
