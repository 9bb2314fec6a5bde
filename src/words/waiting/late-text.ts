import type { State } from '../../journal/state.ts'
import type { DueView } from '../../session/due-view.ts'
import { orderedText, standingText } from './order-words.ts'
import { overdueText } from './out-words.ts'

/** What is late, out or ordered, in one line: `OVERDUE b1, cylinder head at Miller, due 1 Dec, 3 days late`. */
export function lateText(state: State, thing: DueView['late'][number]): string {
  if ('outing' in thing) return overdueText(state, thing.outing)
  return `OVERDUE ${thing.order.id}, ${orderedText(state, thing.order.id)}, ${standingText(state, thing)}`
}
