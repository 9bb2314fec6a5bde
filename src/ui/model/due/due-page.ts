import { dueView } from '../../../session/due-view.ts'
import { timersOf } from '../../../session/timers.ts'
import { counted } from '../../../words/grammar.ts'
import { choicesOf, goTo, type Page, rowsOf } from '../../page.ts'
import { chip, SIGNS } from '../../signs.ts'
import { line, strong } from '../../text/line.ts'
import { inLarge } from '../large-words.ts'
import { groups, headed, indented } from '../rows.ts'
import type { Scene } from '../scene.ts'
import {
  arrivalsRow,
  checksRow,
  comparisonRow,
  judgedRow,
  NumberedRows,
  orderRow,
  outingRow,
  timerRow,
  toBuyRow,
  triggerRow,
} from './due-rows.ts'
import { missingRows } from './missing-row.ts'

/** All that is judged and awaited; each by its number leads to a page of its own. */
export function duePage({ session, width }: Scene): Page {
  const state = session.stateNow()
  const due = dueView(state)
  const numbers = new NumberedRows(width)
  const rows = groups(
    headed(
      'OVERDUE',
      due.late.flatMap((thing) =>
        'outing' in thing ? outingRow(state, thing, numbers) : orderRow(state, thing, numbers),
      ),
    ),
    headed(
      'TO BE CHECKED',
      due.checks.flatMap((checks) => checksRow(state, checks, numbers)),
    ),
    headed(
      'NEW BESIDE OLD',
      due.comparisons.flatMap((comparison) => comparisonRow(state, comparison, numbers)),
    ),
    headed(
      'JUDGED, AND NOT DONE',
      due.judged.flatMap((judged) => judgedRow(state, judged, numbers)),
    ),
    headed(
      'OUT',
      due.outings.flatMap((outing) => outingRow(state, outing, numbers)),
    ),
    headed('TO BUY AND ORDERED', [
      ...toBuyRow(state, numbers),
      ...due.orders.flatMap((order) =>
        // What is only wanted stands in the list of what to buy.
        order.standing === 'wanted' ? [] : orderRow(state, order, numbers),
      ),
      ...(isParcelToCome(due) ? arrivalsRow(numbers) : []),
    ]),
    headed(
      'TIME RUNS',
      timersOf(state).flatMap((timer) => timerRow(state, timer, numbers)),
    ),
    headed(
      'MISSING AND BROKEN',
      due.missing.flatMap((missing) =>
        missingRows(state, missing, {
          width,
          add: (sign, text, choice) => numbers.add(sign, text, choice),
        }),
      ),
    ),
  )
  const all = numbers.count
  const lists = headed(
    'WHAT A FINDING OPENS',
    [...state.triggers.values()].flatMap((trigger) => triggerRow(state, trigger, numbers)),
  )
  const none = indented('Nothing is to be checked, and nothing is awaited.', width)
  return {
    title: line(
      strong('WHAT IS DUE'),
      `  ${counted(all, 'thing')}, ${counted(due.late.length, 'overdue', 'overdue')}`,
    ),
    top: [],
    rows: rowsOf(groups(all === 0 ? none : rows, lists)),
    enter: goTo('where you are', { at: 'now' }),
    choice: choicesOf(numbers.choices),
    large: inLarge(due.late.length > 0 ? `${due.late.length} LATE` : `${all} DUE`, [
      [chip(all === 0 ? SIGNS.nothingDue : due.late.length > 0 ? SIGNS.overdue : SIGNS.due)],
    ]),
  }
}

function isParcelToCome({ late, orders }: ReturnType<typeof dueView>): boolean {
  return [...late, ...orders].some((thing) => 'order' in thing && thing.standing !== 'wanted')
}
