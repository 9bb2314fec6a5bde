import type { Move } from '../../ledger/account.ts'
import { accountOf } from '../../ledger/ledger.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { hereOf } from '../../plan/buying/order-lines.ts'
import { stepOfLine } from '../../plan/waiting/second-looks.ts'
import type { OrderFacts, OutingFacts } from '../../plan/waiting/waiting-facts.ts'
import type { EntryOf } from '../entry.ts'
import type { State } from '../state.ts'
import type { AppliersOf } from './appliers.ts'
import { openContainer } from './containers.ts'
import { carry, enterPieces, newIn, stepOf } from './moves.ts'
import { takeUp } from './steps.ts'

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
export const waitingAppliers: AppliersOf<WaitingEntry> = {
  'order-lined': (state, { orders, since }) => {
    for (const line of orders) {
      newIn(state.orders, line.id)
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
    if (count > hereOf(line)) throw new Error(`more goes back of ${order} than arrived: ${count}`)
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
    newIn(state.outings, outing.id)
    for (const piece of outing.aside) accountOf(state.ledger, piece)
    refuseOtherThan(moves, pieces)
    state.outings.set(outing.id, {
      ...outing,
      aside: [...outing.aside],
      pieces: pieces.map((each) => ({ ...each, away: each.count })),
      tookOut: null,
    })
    carry(state, moves)
  },
  'came-back': (state, { outing: id, pieces, openings, moves, tookOut, result, opened }) => {
    if (opened) openContainer(state, opened)
    const outing = state.outings.get(id)
    if (!outing) throw new Error(`nothing went out as ${id}`)
    for (const { piece, from, count } of moves) if (from === 'out') bringBack(outing, piece, count)
    enterPieces(state, pieces, openings)
    carry(state, moves)
    // Taken out there, and not brought along.
    for (const { piece, to, count } of moves) if (to === 'out') stayAway(outing, piece, count)
    for (const piece of tookOut?.pieces ?? []) accountOf(state.ledger, piece)
    if (tookOut) {
      const text = outing.tookOut === null ? tookOut.text : `${outing.tookOut.text}; ${tookOut.text}`
      outing.tookOut = { text, pieces: [...(outing.tookOut?.pieces ?? []), ...tookOut.pieces] }
    }
    if (result !== undefined) outing.result = result
  },

  'consumable-set': (state, { consumable }) => {
    newIn(state.consumables, consumable.id)
    stepOf(state, consumable.step)
    for (const target of consumable.before) {
      if (typeof target === 'number') stepOf(state, target)
      else if (target !== 'start' && !state.fluids.has(target)) throw new Error(`no fluid ${target}`)
    }
    state.consumables.set(consumable.id, { ...consumable, before: [...consumable.before], applied: null })
  },
  'consumable-dropped': (state, { consumable }) => {
    if (!state.consumables.delete(consumable)) throw new Error(`nothing is put on as ${consumable}`)
  },
  applied: (state, { n, at, consumable: id, began }) => {
    const consumable = state.consumables.get(id)
    if (!consumable) throw new Error(`nothing is put on as ${id}`)
    if (began) takeUp(state, consumable.step)
    consumable.applied = { n, at }
  },

  'seen-again': (state, { step, line, by, at, says }) => {
    if (stepOfLine(state, line) !== step) throw new Error(`no ${line} in step ${step}`)
    const seen = state.secondLooks.get(step) ?? []
    state.secondLooks.set(step, [...seen.filter((each) => each.line !== line), { line, by, at, says }])
  },
}

/** What arrived is noted with the line that it was ordered by. */
export function noteArrival(state: State, { order, kit }: EntryOf<'supplied'>): void {
  for (const { pieces } of kit?.lines ?? []) for (const piece of pieces) accountOf(state.ledger, piece)
  if (order) orderOf(state, order.id).arrived += order.count
}

/** Throws where another number of a piece goes out than the outing says: the rest would be owed for ever, or forgotten. */
function refuseOtherThan(moves: readonly Move[], pieces: readonly { piece: PieceId; count: number }[]): void {
  const going = new Map<PieceId, number>()
  for (const { piece, to, count } of moves)
    if (to === 'out') going.set(piece, (going.get(piece) ?? 0) + count)
  const other = pieces.find(({ piece, count }) => going.get(piece) !== count)
  if (other || going.size !== pieces.length) throw new Error('what goes out is not what the outing says')
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
