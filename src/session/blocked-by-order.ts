import type { State } from '../journal/state.ts'
import { openOf } from '../plan/buying/order-lines.ts'
import { shortageOf } from '../plan/buying/short-pieces.ts'
import { buildNeeds, builtOnTop } from '../plan/order.ts'
import { heirs } from '../plan/succession.ts'
import type { OrderFacts } from '../plan/waiting/waiting-facts.ts'

/**
 * The steps that cannot be done before a line is here: that of its piece, and all that is built on it, by their numbers.
 * None where the home is not short without it.
 */
export function blockedByOrder(state: State, order: OrderFacts): number[] {
  if (order.piece === undefined || openOf(order) === 0) return []
  const account = state.ledger.accounts.get(heirs(state)(order.piece))
  if (!account || shortageOf(state, account).short === 0) return []
  const { step } = account.piece
  return [step, ...builtOnTop(buildNeeds(state.steps), [step])]
    .filter((no) => state.steps.get(no)?.built !== 'done')
    .sort((a, b) => a - b)
}
