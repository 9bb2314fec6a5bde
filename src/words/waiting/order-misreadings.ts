import type { State } from '../../journal/state.ts'
import type { Misreading } from '../../lines/reading.ts'
import { say } from '../cures.ts'
import { type Told, told } from '../told.ts'
import { orderName } from './names.ts'

type OrderMisreading = Extract<Misreading, { code: 'no-such-want' | 'no-such-order' }>

/** That words name no line of what to buy, or none that is still to come. */
export function orderMisreadingText(state: State, misreading: OrderMisreading): Told {
  if (misreading.code === 'no-such-want') {
    const { part, count } = misreading
    return told(
      count === 0 ? 'nothing is to be bought' : `there is no line '${part}' to buy, only 1 to ${count}`,
      count === 0 ? `beyond that: ${say('want 2 tubes grease')}` : `${say('to buy')} shows them`,
    )
  }
  const { part, open } = misreading
  const what =
    part === ''
      ? 'nothing that was ordered is still to come'
      : `nothing that is still to come is called '${part}'`
  return open.length === 0
    ? told(what, `what is here without an order: ${say('new PIECE')}`)
    : told(
        what,
        'name one of these by its number',
        open.map((id) => orderName(state, id)),
      )
}
