import type { DueChecks, DueView } from '../../../session/due-view.ts'
import { judgingView } from '../../../session/judging-view.ts'
import { shoppingView } from '../../../session/shopping-view.ts'
import type { timersOf } from '../../../session/timers.ts'
import { timerText } from '../../../words/consumables/timer-words.ts'
import { dayText, dueText } from '../../../words/days.ts'
import { itemsText } from '../../../words/judging/asked-text.ts'
import { checkWords, VERDICTS } from '../../../words/judging/names.ts'
import { stepName } from '../../../words/names.ts'
import { countedPieces, pieceName } from '../../../words/pieces.ts'
import { orderedText, standingText } from '../../../words/waiting/order-words.ts'
import { holderName } from '../../../words/waiting/out-words.ts'
import { toBuyText } from '../../../words/waiting/shopping-text.ts'
import { type Choice, goTo } from '../../page.ts'
import { chipColumn, SIGNS, type Sign } from '../../signs.ts'
import { type Line, line, strong, wrap } from '../../text/line.ts'
import type { State } from '../scene.ts'
import { comparisonSign } from './compare-page.ts'
import { standingSign } from './judge-page.ts'
import { orderSign } from './order-page.ts'
import { outingSign } from './outing-page.ts'

type Outing = DueView['outings'][number]
type Order = DueView['orders'][number]
type Trigger = State['triggers'] extends Map<unknown, infer Value> ? Value : never

/** A number takes two digits. */
const MOST = 99
const SIGN_WIDTH = 16
/** What does not fit on a row goes on under its words. */
const HANG = SIGN_WIDTH + 6

/** Rows with a sign each, numbered one after the other. */
export class NumberedRows {
  readonly choices = new Map<number, Choice>()
  /** All rows, those past the last number too. */
  count = 0
  readonly #width: number

  constructor(width: number) {
    this.#width = width
  }

  add(sign: Sign, text: Line, choice: Choice): Line[] {
    this.count += 1
    return this.#numbered(line(...chipColumn(sign, SIGN_WIDTH), ' ', ...text), choice, HANG)
  }

  /** A row that only offers something: nothing is due by it. */
  offer(row: Line, choice: Choice): Line[] {
    return this.#numbered(row, choice, 5)
  }

  #numbered(row: Line, choice: Choice, hang: number): Line[] {
    const no = this.choices.size + 1
    if (no > MOST) return wrap(line('     ', ...row), this.#width, hang)
    this.choices.set(no, choice)
    return wrap(line(strong(String(no).padStart(3)), '  ', ...row), this.#width, hang)
  }
}

/** The checks to do on a piece or a set, on a row. */
export function checksRow(state: State, { pieces, checks }: DueChecks, numbers: NumberedRows): Line[] {
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

/** What went out together, and until when. */
export function outingRow(state: State, view: Outing, numbers: NumberedRows): Line[] {
  const { id, to, due, since, pieces } = view.outing
  const away = pieces.filter((each) => each.away > 0)
  const names = countedPieces(
    state,
    (away.length > 0 ? away : pieces).map(({ piece, count, away: out }) => ({ piece, count: out || count })),
  )
  const day =
    due === undefined ? `since ${dayText(since, state.clock.today)}` : dueText(due, state.clock.today)
  const said =
    view.standing === 'unanswered'
      ? `back from ${to}: what was taken out there?`
      : `${holderName(view.outing)}, ${day}`
  return numbers.add(
    outingSign(view),
    line(strong(`${id}, ${names}`), `  ${said}`),
    goTo(`look at ${id}`, { at: 'outing', outing: id }),
  )
}

/** What must be bought has a list of its own: here is how much of it there is. */
export function toBuyRow(state: State, numbers: NumberedRows): Line[] {
  const view = shoppingView(state)
  if (view.lines.length === 0) return []
  return numbers.add(SIGNS.wanted, line(strong(toBuyText(view))), goTo('what is to buy', { at: 'buy' }))
}

/** What was ordered comes in a parcel, several lines of it: they are ticked on a page of their own. */
export function arrivalsRow(numbers: NumberedRows): Line[] {
  return numbers.offer(
    line('a parcel is here: tick what is in it'),
    goTo('tick what is in the parcel', { at: 'arrivals' }),
  )
}

/** The user's own lists; a number begins the words of the finding that opens one. */
export function triggerRow(state: State, trigger: Trigger, numbers: NumberedRows): Line[] {
  const { when, items } = trigger
  return numbers.offer(line(strong(`when ${when}`), `  ${itemsText(state, items)}`), {
    says: `found: ${when}`,
    act: { do: 'write', before: `finding ${when}` },
  })
}

/** A line that was ordered, and how it stands. */
export function orderRow(state: State, view: Order, numbers: NumberedRows): Line[] {
  const { id } = view.order
  return numbers.add(
    orderSign(view),
    line(strong(`${id}, ${orderedText(state, id)}`), `  ${standingText(state, view)}`),
    goTo(`look at ${id}`, { at: 'order', order: id }),
  )
}

/** A new piece that is to be held beside the old one. */
export function comparisonRow(
  state: State,
  comparison: DueView['comparisons'][number],
  numbers: NumberedRows,
): Line[] {
  const { piece, old } = comparison
  const name = pieceName(state, piece)
  return numbers.add(
    comparisonSign(comparison),
    line(strong(name), `  ${piece}, the old one is ${old}`),
    goTo(`compare ${name}`, { at: 'compare', piece }),
  )
}

/** A piece that is judged, and waits for what the verdict asks. */
export function judgedRow(
  state: State,
  { piece, verdict }: DueView['judged'][number],
  numbers: NumberedRows,
): Line[] {
  const name = pieceName(state, piece)
  return numbers.add(
    standingSign(judgingView(state, piece)),
    line(strong(name), `  ${VERDICTS[verdict.verdict]}, because ${verdict.reason}`),
    goTo(`look at ${name}`, { at: 'judge', piece }),
  )
}

/** A time that runs leads to the step in which it was put on. */
export function timerRow(
  state: State,
  timer: ReturnType<typeof timersOf>[number],
  numbers: NumberedRows,
): Line[] {
  const { step } = timer.consumable
  return numbers.add(
    timer.isOver ? SIGNS.runOut : SIGNS.setting,
    line(timerText(state, timer)),
    goTo(`look at ${stepName(state, step)}`, { at: 'step', step }),
  )
}
