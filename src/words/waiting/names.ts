import type { State } from '../../journal/state.ts'
import type { ConsumableId, OrderId, OutingId, SecondLine } from '../../plan/waiting-facts.ts'
import { joined } from '../grammar.ts'
import { markName, tighteningName } from '../names.ts'
import { countedPiece, pieceName } from '../pieces.ts'
import { orderedText } from './order-words.ts'

/** What was ordered: `o3, 8 × head bolts`. */
export function orderName(state: State, id: OrderId): string {
  const line = state.orders.get(id)
  return line ? `${id}, ${orderedText(state, id)}` : id
}

/** What went out and to whom: `b1, cylinder head, at the machine shop`. */
export function outingName(state: State, id: OutingId): string {
  const outing = state.outings.get(id)
  if (!outing) return id
  const pieces = outing.pieces.map(({ piece, count }) => countedPiece(state, piece, count))
  return `${id}, ${joined(pieces)}, ${outing.job === undefined ? 'at' : 'lent to'} ${outing.to}`
}

/** What is put on: `s1, grey sealant on the sump face`. */
export function consumableName(state: State, id: ConsumableId): string {
  const { name, side } = state.consumables.get(id) ?? {}
  return name === undefined ? id : `${id}, ${name}${side ? `, ${side} up` : ''}`
}

/** One thing that is seen a second time. */
export function secondLineName(state: State, line: SecondLine): string {
  if (line.startsWith('p')) return pieceName(state, line as `p${number}`)
  if (line.startsWith('m')) return markName(state, line as `m${number}`)
  if (line.startsWith('t')) return tighteningName(state, line as `t${number}`)
  return consumableName(state, line as ConsumableId)
}
