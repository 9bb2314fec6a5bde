import type { EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import { dueText } from '../days.ts'
import { joined } from '../grammar.ts'
import { pieceName } from '../pieces.ts'
import { orderName } from './names.ts'
import { amountOf, amountText, notesText } from './order-words.ts'

type OrderEntry = 'order-lined' | 'order-changed' | 'order-returned' | 'part-noted'

/** One line of history for what is ordered, and what is known about buying. */
export const orderTellers: { [Type in OrderEntry]: (state: State, entry: EntryOf<Type>) => string } = {
  'order-lined': (state, { orders }) => {
    const lines = orders.map(({ id, name, count, unit, due, ...notes }) =>
      [
        `${id}, ${amountOf(count, unit, name)}`,
        ...notesText(notes),
        due ? dueText(due, state.clock.today) : '',
      ]
        .filter(Boolean)
        .join(', '),
    )
    return `${orders.every(({ ordered }) => ordered) ? 'ordered' : 'to buy'}: ${lines.join('; ')}`
  },
  'order-changed': (state, { order, ordered, count, due, cancelled, ...notes }) => {
    const facts = [
      ordered ? 'ordered' : '',
      count === undefined ? '' : `${amountText(count, state.orders.get(order)?.unit)} of it`,
      ...notesText(notes),
      due === undefined ? '' : dueText(due, state.clock.today),
      cancelled === undefined ? '' : `cancelled, because ${cancelled}`,
    ].filter(Boolean)
    return `${orderName(state, order)}: ${facts.join(', ') || 'as before'}`
  },
  'order-returned': (state, { order, count, reason }) =>
    `sent back: ${amountText(count, state.orders.get(order)?.unit)} of ${orderName(state, order)}, because ${reason}`,
  'part-noted': (state, { piece, ...notes }) =>
    `to buy ${pieceName(state, piece)}: ${notesText(notes).join(', ')}`,
}

/** What arrived of an order, or what a kit held, before the pieces that came: `arrived, o1: `. Empty for all else. */
export function arrivalText(state: State, { order, kit }: EntryOf<'supplied'>): string {
  if (kit) return `kit counted in, ${kit.name}: ${joined(kit.lines.map(kitLine))}`
  if (!order) return ''
  return `arrived: ${amountText(order.count, state.orders.get(order.id)?.unit)} of ${orderName(state, order.id)}`
}

function kitLine({
  name,
  count,
  spare,
  short,
}: NonNullable<EntryOf<'supplied'>['kit']>['lines'][number]): string {
  const rest = [
    spare === 0 ? '' : spare === count ? 'spare, for no home waits for it' : `${spare} of them spare`,
    short === 0 ? '' : `${short} short`,
  ].filter(Boolean)
  return `${count} × ${name}${rest.length > 0 ? ` (${rest.join(', ')})` : ''}`
}
