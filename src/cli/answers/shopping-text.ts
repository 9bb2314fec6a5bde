import type { Session } from '../../session/session.ts'
import { type ShoppingView, shoppingView } from '../../session/shopping-view.ts'
import { blockedText, orderedText, standingText } from '../../words/waiting/order-words.ts'
import { groupHeading, totalsText, wantNotes, wantSum, wantText } from '../../words/waiting/shopping-text.ts'

/** What to buy, numbered for `buy`, and how what was ordered stands. */
export function shoppingAnswer(session: Session): { text: string[]; answer: unknown } {
  const state = session.stateNow()
  const view = shoppingView(state)
  return { text: [...toBuy(state, view), ...ordered(state, view)], answer: view }
}

type State = ReturnType<Session['stateNow']>

function toBuy(state: State, { lines, toBuy: totals }: ShoppingView): string[] {
  if (lines.length === 0) return ['Nothing is to be bought that is not ordered.']
  let group: string | null = null
  const rows = lines.flatMap((line, index) => {
    const heading = line.group === group ? [] : [`${groupHeading(line.group)}:`]
    group = line.group
    const sum = wantSum(line)
    const facts = [sum === '' ? '' : `(${sum})`, ...wantNotes(line)].filter(Boolean)
    return [...heading, `${String(index + 1).padStart(3)}  ${[wantText(state, line), ...facts].join('  ')}`]
  })
  return ['To buy:', ...rows, ...sumRow(totals), 'When ordered: buy 1,2 or: buy all']
}

function ordered(state: State, { orders, ordered: totals }: ShoppingView): string[] {
  const lined = orders.filter(({ standing }) => standing !== 'wanted')
  if (lined.length === 0) return []
  const rows = lined.map((view) => {
    const { id } = view.order
    return `${id.padStart(4)}  ${orderedText(state, id)}: ${standingText(state, view)}${blockedText(view.blocked)}`
  })
  return ['', 'Ordered:', ...rows, ...sumRow(totals)]
}

function sumRow(totals: ShoppingView['toBuy']): string[] {
  return totals.sums.length === 0 ? [] : [`     In all: ${totalsText(totals)}.`]
}
