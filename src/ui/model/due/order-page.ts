import { type OrderView, orderView } from '../../../session/order-view.ts'
import { dayText, dueText } from '../../../words/days.ts'
import { amountText, notesText, orderedText } from '../../../words/waiting/order-words.ts'
import type { Command } from '../../act.ts'
import { BACK, type Choice, choicesOf, NO_CHOICES, type Page, rowsOf } from '../../page.ts'
import { chip, SIGNS, type Sign } from '../../signs.ts'
import { type Line, line, strong } from '../../text/line.ts'
import { inLarge } from '../large-words.ts'
import { groups, headed, indented, numbered } from '../rows.ts'
import type { OrderId, Scene, State } from '../scene.ts'

/** One line that is wanted or ordered: what is known of it, what arrived, and what can be said about it. */
export function orderPage({ session, width }: Scene, id: OrderId): Page {
  const state = session.stateNow()
  const order = state.orders.get(id)
  if (!order) return noOrder(id, width)
  const view = orderView(state, order)
  const choices = orderChoices(view)
  const sign = orderSign(view)
  return {
    title: line(strong(`${id}, ${orderedText(state, id)}`), '  ', chip(sign)),
    top: [],
    rows: rowsOf(
      groups(
        facts(state, view).flatMap((text) => indented(text, width)),
        headed('ARRIVED', arrivedRows(view, width)),
        headed(
          'SAY WHAT CAME OF IT',
          [...choices].flatMap(([no, { says }]) => numbered(no, says, width)),
        ),
      ),
    ),
    enter: BACK,
    choice: choicesOf(choices),
    large: inLarge(sign.word, [[chip(sign)], orderedText(state, id)]),
  }
}

/** How a line stands, as a sign; late before anything else. */
export function orderSign({ standing }: OrderView): Sign {
  switch (standing) {
    case 'wanted':
      return SIGNS.wanted
    case 'ordered':
      return SIGNS.ordered
    case 'late':
      return SIGNS.overdue
    case 'partly':
      return SIGNS.partly
    case 'wrong':
      return SIGNS.wrongOne
    case 'returned':
      return SIGNS.sentBack
    case 'arrived':
      return SIGNS.arrived
    case 'cancelled':
      return SIGNS.cancelled
    default:
      return standing satisfies never
  }
}

function facts({ clock }: State, { order }: OrderView): string[] {
  const { ordered, since, due, cancelled } = order
  const bought = notesText(order)
  const when = [
    since === null || !ordered ? '' : `ordered ${dayText(since, clock.today)}`,
    due === undefined ? '' : dueText(due, clock.today),
  ].filter(Boolean)
  return [
    ...(bought.length > 0 ? [bought.join(', ')] : []),
    ...(when.length > 0 ? [when.join('; ')] : []),
    ...(cancelled === null ? [] : [`cancelled, because ${cancelled}`]),
  ]
}

function arrivedRows({ order, open }: OrderView, width: number): Line[] {
  const { count, arrived, wrong, returned, ordered, unit } = order
  if (!ordered && arrived === 0) return []
  const said = [
    `${amountText(arrived, unit)} of ${amountText(count, unit)} arrived`,
    ...(wrong > 0 ? [`${amountText(wrong, unit)} of them wrong`] : []),
    ...(returned > 0 ? [`${amountText(returned, unit)} sent back`] : []),
    `${amountText(open, unit)} still to come`,
  ]
  return indented(said.join(', '), width)
}

/** Each with a number of its own, whether or not the others can be chosen now: the same number says the same. */
function orderChoices({ order, open, here }: OrderView): Map<number, Choice> {
  const { id, ordered, unit } = order
  const choices = new Map<number, Choice>()
  if (order.cancelled !== null) return choices
  if (open > 0) {
    const all =
      open === 1
        ? 'it is here'
        : unit === undefined
          ? `all ${open} are here`
          : `all ${amountText(open, unit)} is here`
    choices.set(1, send(`${all}: onto the bench`, { do: 'receive', order: id, into: BENCH }))
    choices.set(2, {
      says: 'some are here, or they go elsewhere: say how many, and into what',
      act: { do: 'write', before: `arrived ${id} `, asks: 'Type how many and where to, as: 3 into 14' },
    })
  }
  if (!ordered) choices.set(3, send('it is ordered now', { do: 'change-order', order: id, ordered: true }))
  if (here > 0)
    choices.set(4, {
      says: 'what came is not right, it goes back: say why',
      act: { do: 'write', before: `send back ${id} because `, asks: 'Type why, as: for the other side' },
    })
  if (open > 0)
    choices.set(5, {
      says: 'it is not wanted any more: say why',
      act: { do: 'write', before: `cancel ${id} because `, asks: 'Type why, as: found the old one' },
    })
  return choices
}

const BENCH = { kind: 'place', place: 'bench' } as const

function send(says: string, command: Command): Choice {
  return { says, act: { do: 'send', commands: [command] } }
}

function noOrder(id: OrderId, width: number): Page {
  return {
    title: line(strong(id)),
    top: [],
    rows: rowsOf(indented(`There is no line ${id}.`, width)),
    enter: BACK,
    choice: NO_CHOICES,
    large: null,
  }
}
