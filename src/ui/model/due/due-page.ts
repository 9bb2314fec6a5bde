import { type DueChecks, type DueView, dueCount, dueView } from '../../../session/due-view.ts'
import { judgingView } from '../../../session/judging-view.ts'
import { dayText, dueText } from '../../../words/days.ts'
import { counted } from '../../../words/grammar.ts'
import { checkWords, VERDICTS } from '../../../words/judging/names.ts'
import { countedPiece, pieceName } from '../../../words/pieces.ts'
import { orderName } from '../../../words/waiting/names.ts'
import { type Choice, choicesOf, goTo, type Page, rowsOf } from '../../page.ts'
import { chip, chipColumn, SIGNS, type Sign } from '../../signs.ts'
import { type Line, line, strong } from '../../text/line.ts'
import { groups, headed, indented, numbered } from '../rows.ts'
import type { Scene, State } from '../scene.ts'
import { comparisonSign } from './compare-page.ts'
import { standingSign } from './judge-page.ts'
import { missingRows } from './missing-row.ts'
import { orderSign } from './order-page.ts'
import { outingSign } from './outing-page.ts'

type Outing = DueView['outings'][number]
type Order = DueView['orders'][number]

/** All that is judged and awaited; each by its number leads to a page of its own. */
export function duePage({ session, width }: Scene): Page {
  const state = session.stateNow()
  const due = dueView(state)
  const numbers = new Numbers(width)
  const all = dueCount(due)
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
      due.comparisons.flatMap((comparison) => {
        const { piece, old } = comparison
        const name = pieceName(state, piece)
        return numbers.add(
          comparisonSign(comparison),
          line(strong(name), `  ${piece}, the old one is ${old}`),
          goTo(`compare ${name}`, { at: 'compare', piece }),
        )
      }),
    ),
    headed(
      'JUDGED, AND NOT DONE',
      due.judged.flatMap(({ piece, verdict }) =>
        numbers.add(
          standingSign(judgingView(state, piece)),
          line(strong(pieceName(state, piece)), `  ${VERDICTS[verdict.verdict]}, because ${verdict.reason}`),
          goTo(`look at ${pieceName(state, piece)}`, { at: 'judge', piece }),
        ),
      ),
    ),
    headed(
      'OUT',
      due.outings.flatMap((outing) => outingRow(state, outing, numbers)),
    ),
    headed(
      'TO BUY AND ORDERED',
      due.orders.flatMap((order) => orderRow(state, order, numbers)),
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
  return {
    title: line(
      strong('WHAT IS DUE'),
      `  ${counted(all, 'thing')}, ${counted(due.late.length, 'overdue', 'overdue')}`,
    ),
    top: [],
    rows: rowsOf(all === 0 ? indented('Nothing is to be checked, and nothing is awaited.', width) : rows),
    enter: goTo('where you are', { at: 'now' }),
    choice: choicesOf(numbers.choices),
    large: {
      letters: due.late.length > 0 ? `${due.late.length} LATE` : String(all),
      under: [line(chip(all === 0 ? SIGNS.nothingDue : due.late.length > 0 ? SIGNS.overdue : SIGNS.due))],
    },
  }
}

/** A number takes two digits. */
const MOST = 99
const SIGN_WIDTH = 16

/** Rows with a sign each, numbered one after the other. */
class Numbers {
  readonly choices = new Map<number, Choice>()
  readonly #width: number

  constructor(width: number) {
    this.#width = width
  }

  add(sign: Sign, text: Line, choice: Choice): Line[] {
    const row = line(...chipColumn(sign, SIGN_WIDTH), ' ', ...text)
    if (this.choices.size >= MOST) return indented(row, this.#width)
    const no = this.choices.size + 1
    this.choices.set(no, choice)
    return numbered(no, row, this.#width)
  }
}

function checksRow(state: State, { pieces, checks }: DueChecks, numbers: Numbers): Line[] {
  const [piece] = pieces
  if (piece === undefined) return []
  const name =
    pieces.length === 1
      ? pieceName(state, piece)
      : `${pieces.length} × ${state.ledger.accounts.get(piece)?.piece.name ?? piece}`
  const asked = [...new Set(checks.map(checkWords))].join('; ')
  return numbers.add(
    standingSign(judgingView(state, piece)),
    line(strong(name), `  ${asked}`),
    goTo(`check ${name}`, { at: 'judge', piece, ...(pieces.length > 1 && { ofSet: true }) }),
  )
}

function outingRow(state: State, view: Outing, numbers: Numbers): Line[] {
  const { id, to, due, since, pieces } = view.outing
  const away = pieces.filter((each) => each.away > 0)
  const names = (away.length > 0 ? away : pieces).map(({ piece, count, away: out }) =>
    countedPiece(state, piece, out > 0 ? out : count),
  )
  const day =
    due === undefined ? `since ${dayText(since, state.clock.today)}` : dueText(due, state.clock.today)
  const said =
    view.standing === 'unanswered' ? `back from ${to}: what was taken out there?` : `at ${to}, ${day}`
  return numbers.add(
    outingSign(view),
    line(strong(`${id}, ${names.join(', ')}`), `  ${said}`),
    goTo(`look at ${id}`, { at: 'outing', outing: id }),
  )
}

function orderRow(state: State, view: Order, numbers: Numbers): Line[] {
  const { order, open, here } = view
  const { id, due, count, source } = order
  const facts = [
    here > 0 ? `${here} of ${count} here, ${open} to come` : '',
    source === undefined ? '' : `from ${source}`,
    due === undefined ? '' : dueText(due, state.clock.today),
  ].filter(Boolean)
  return numbers.add(
    orderSign(view),
    line(strong(orderName(state, id)), facts.length > 0 ? `  ${facts.join(', ')}` : ''),
    goTo(`look at ${id}`, { at: 'order', order: id }),
  )
}
