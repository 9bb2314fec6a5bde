import { judgedPieces } from '../../session/check-views.ts'
import { dueView } from '../../session/due-view.ts'
import type { OrderView } from '../../session/order-view.ts'
import type { OutingView } from '../../session/outing-view.ts'
import type { Session } from '../../session/session.ts'
import { shoppingView } from '../../session/shopping-view.ts'
import { say } from '../../words/cures.ts'
import { judgedList } from '../../words/judging/judged-list.ts'
import { missingText } from '../../words/missing-text.ts'
import { orderedText, standingText } from '../../words/waiting/order-words.ts'
import { outingRows } from '../../words/waiting/outing-rows.ts'
import { toBuyText } from '../../words/waiting/shopping-text.ts'

/** All that is judged and awaited: what is late first, then what is to be checked, what is out, ordered and missing. */
export function dueAnswer(session: Session): { text: string[]; answer: unknown } {
  const state = session.stateNow()
  const due = dueView(state)
  const shopping = shoppingView(state)
  const judged = judgedPieces(state).filter(({ standing }) => standing !== 'accepted' && standing !== 'gone')
  const rowsOf = (thing: OutingView | OrderView): string[] =>
    'outing' in thing
      ? outingRows(state, thing)
      : [`${thing.order.id}  ${orderedText(state, thing.order.id)}, ${standingText(state, thing)}`]
  const text = [
    ...headed('OVERDUE', due.late.flatMap(rowsOf)),
    ...headed('TO BE CHECKED AND DECIDED', judgedList(state, judged)),
    ...headed('OUT', due.outings.flatMap(rowsOf)),
    ...headed('TO BUY AND ORDERED', [
      ...(shopping.lines.length === 0 ? [] : [`${toBuyText(shopping)}: ${say('to buy')} shows them`]),
      // What is only wanted is among the lines that are not ordered yet.
      ...due.orders.filter(({ standing }) => standing !== 'wanted').flatMap(rowsOf),
    ]),
    ...headed(
      'MISSING OR BROKEN',
      due.missing.flatMap((view) => {
        const { what, ways } = missingText(state, view)
        return [`${view.piece}  ${what}`, ...ways.map((way) => `    ${way}`)]
      }),
    ),
  ]
  return {
    text: text.length > 0 ? text : ['Nothing is to be checked, and nothing is awaited.'],
    answer: { ...due, toBuy: shopping.lines },
  }
}

function headed(head: string, rows: readonly string[]): string[] {
  return rows.length === 0 ? [] : [`${head}:`, ...rows.map((row) => `  ${row}`)]
}
