import type { State } from '../../journal/state.ts'
import type { OrderStanding } from '../../plan/buying/order-lines.ts'
import type { OrderFacts, OrderId, PartNotes } from '../../plan/waiting/waiting-facts.ts'
import { dayText, dueText } from '../days.ts'
import { stepNumbers } from '../grammar.ts'

/** So much of something that is bought: `8 × head bolts`, `4.2 L coolant`, `2 tubes grease`. */
export function amountOf(count: number, unit: string | undefined, name: string): string {
  return unit === undefined ? `${count} × ${name}` : `${figure(count)} ${unit} ${name}`
}

/** A number of pieces, or an amount with its unit: `8`, `4.2 L`. */
export function amountText(count: number, unit: string | undefined): string {
  return unit === undefined ? figure(count) : `${figure(count)} ${unit}`
}

/** What is known about buying a thing: `number 11-204, 3.20 EUR each, from the corner shop`. */
export function notesText({ partNo, price, source }: PartNotes): string[] {
  return [
    partNo === undefined ? '' : `number ${partNo}`,
    price === undefined ? '' : `${price.typed}${price.inAll ? ' in all' : ' each'}`,
    source === undefined ? '' : `from ${source}`,
  ].filter(Boolean)
}

/** How an ordered or wanted line stands, in words: `due 4 Dec, 3 days late`, `partly here, 2 here, 6 to come`. */
export function standingText(
  { clock }: State,
  { order, standing, open, here }: { order: OrderFacts; standing: OrderStanding; open: number; here: number },
): string {
  const { unit, due, since, wrong, returned, cancelled } = order
  const when = due === undefined ? '' : dueText(due, clock.today)
  const some = here > 0 ? `${amountText(here, unit)} here, ${amountText(open, unit)} to come` : ''
  const ordered = since === null ? 'ordered' : `ordered ${dayText(since, clock.today)}`
  const parts: Record<OrderStanding, string[]> = {
    wanted: ['wanted, not ordered yet', when],
    ordered: [ordered, when],
    late: [when, some],
    partly: ['partly here', some, when],
    wrong: [`${amountText(wrong, unit)} wrong, to go back`, some],
    returned: [`${amountText(returned, unit)} sent back`, `${amountText(open, unit)} to come`, when],
    arrived: [returned > 0 ? `all here, ${amountText(returned, unit)} sent back before` : 'all here'],
    cancelled: [`cancelled, because ${cancelled}`, here > 0 ? `${amountText(here, unit)} here` : ''],
  }
  return parts[standing].filter(Boolean).join(', ')
}

/** What cannot be done before a line is here, for the end of its row: `; steps 1 and 2 wait`. Empty for no steps. */
export function blockedText(steps: readonly number[]): string {
  return steps.length === 0 ? '' : `; ${stepNumbers(steps)} ${steps.length === 1 ? 'waits' : 'wait'}`
}

/** What was ordered, without its number: `8 × head bolts`. */
export function orderedText(state: State, id: OrderId): string {
  const order = state.orders.get(id)
  return order ? amountOf(order.count, order.unit, order.name) : id
}

function figure(count: number): string {
  return String(Number(count.toFixed(2)))
}
