import { type ShoppingView, shoppingView } from '../../../session/shopping-view.ts'
import { counted } from '../../../words/grammar.ts'
import { blockedText, orderedText, standingText } from '../../../words/waiting/order-words.ts'
import {
  groupHeading,
  totalsText,
  wantNotes,
  wantSum,
  wantText,
} from '../../../words/waiting/shopping-text.ts'
import { BACK, type Choice, choicesOf, goTo, type Page, rowsOf } from '../../page.ts'
import { type Line, line, strong } from '../../text/line.ts'
import { inLarge } from '../large-words.ts'
import { groups, headed, indented, numbered } from '../rows.ts'
import type { Scene, State } from '../scene.ts'

/** What must be bought, numbered as "buy" takes it, and after it how what was ordered stands. */
export function buyPage({ session, width }: Scene): Page {
  const state = session.stateNow()
  const view = shoppingView(state)
  const choices = new Map<number, Choice>()
  const rows = groups(
    ...toBuyRows(state, view, { width, choices }),
    headed('ORDERED', orderedRows(state, view, { width, choices })),
    headed(
      'OR TYPE',
      [
        '"buy all" when all of it is ordered',
        '"want 2 tubes grease" for what the record does not ask for',
        '"buy csv" writes the list to a file',
      ].flatMap((text) => indented(text, width)),
    ),
  )
  const none = view.lines.length === 0
  return {
    title: line(strong('WHAT IS TO BUY'), `  ${counted(view.lines.length, 'line')}`, inAll(view.toBuy)),
    top: [],
    rows: rowsOf(none ? groups(indented('Nothing is to be bought that is not ordered.', width), rows) : rows),
    enter: BACK,
    choice: choicesOf(choices),
    large: inLarge(String(view.lines.length), ['to buy']),
  }
}

interface Drawn {
  width: number
  choices: Map<number, Choice>
}

/** A number takes two digits. */
const MOST = 99

function toBuyRows(state: State, { lines }: ShoppingView, { width, choices }: Drawn): Line[][] {
  const parts = new Map<string, Line[]>()
  for (const [index, each] of lines.entries()) {
    const no = index + 1
    const sum = wantSum(each)
    const facts = [...(sum === '' ? [] : [`(${sum})`]), ...wantNotes(each)]
    const name = wantText(state, each)
    const text = line(strong(name), facts.length > 0 ? `  ${facts.join(', ')}` : '')
    if (no <= MOST) choices.set(no, bought(no, name))
    const heading = groupHeading(each.group).toUpperCase()
    const rows = parts.get(heading) ?? []
    parts.set(heading, rows)
    rows.push(...numbered(no, text, width))
  }
  return [...parts].map(([heading, rows]) => headed(heading, rows))
}

function bought(no: number, name: string): Choice {
  return {
    says: `${name}: ordered, say from whom and for when`,
    act: {
      do: 'write',
      before: `buy ${no} `,
      asks: 'Type what is known, as: from the dealer at 4.20 EUR due Friday. Or Enter.',
    },
  }
}

/** What was ordered goes on after the last number of what is to buy. */
function orderedRows(
  state: State,
  { lines, orders, ordered }: ShoppingView,
  { width, choices }: Drawn,
): Line[] {
  const rows = orders
    .filter(({ standing }) => standing !== 'wanted')
    .flatMap((view, index) => {
      const { order, blocked } = view
      const no = lines.length + index + 1
      if (no <= MOST) choices.set(no, goTo(`look at ${order.id}`, { at: 'order', order: order.id }))
      const name = `${order.id}, ${orderedText(state, order.id)}`
      return numbered(no, line(strong(name), `  ${standingText(state, view)}${blockedText(blocked)}`), width)
    })
  return ordered.sums.length === 0 ? rows : [...rows, ...indented(`In all ${totalsText(ordered)}.`, width)]
}

function inAll(totals: ShoppingView['toBuy']): string {
  return totals.sums.length === 0 ? '' : `, ${totalsText(totals)}`
}
