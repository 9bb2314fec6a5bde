import { type OrderView, orderView } from '../../../session/order-view.ts'
import { amountText, orderedText } from '../../../words/waiting/order-words.ts'
import { BACK, type Choice, choicesOf, type Page, rowsOf } from '../../page.ts'
import { chipColumn } from '../../signs.ts'
import { type Line, line, strong } from '../../text/line.ts'
import { inLarge } from '../large-words.ts'
import { groups, headed, indented, numbered } from '../rows.ts'
import type { Scene, State } from '../scene.ts'
import { orderSign } from './order-page.ts'

/** A parcel is here: each line that was ordered is ticked by its own number, which stays the same when it is ticked. */
export function arrivalsPage({ session, width }: Scene): Page {
  const state = session.stateNow()
  const views = [...state.orders.values()]
    .filter(({ ordered, cancelled }) => ordered && cancelled === null)
    .map((order) => orderView(state, order))
  const open = views.filter((view) => view.open > 0)
  const here = views.filter((view) => view.open === 0)
  const choices = new Map<number, Choice>(views.map((view) => [numberOf(view), tick(state, view)]))
  return {
    title: line(strong('WHAT ARRIVED'), `  ${open.length} to come, ${here.length} here`),
    top: [],
    rows: rowsOf(
      groups(
        indented('A number says: all that was to come of that line is here, onto the bench.', width),
        headed(
          'TO COME',
          open.flatMap((view) => row(state, view, width)),
        ),
        headed(
          'HERE',
          here.flatMap((view) => row(state, view, width)),
        ),
        headed(
          'OR TYPE',
          [
            '"arrived o1 3 into 14" when only some are here, or they go elsewhere',
            '"kit gaskets: 1 head gasket, 4 O-rings" counts a kit in',
          ].flatMap((text) => indented(text, width)),
        ),
      ),
    ),
    enter: BACK,
    choice: choicesOf(choices),
    large: inLarge(String(open.length), [open.length === 1 ? 'line to come' : 'lines to come']),
  }
}

const SIGN_WIDTH = 16

function row(state: State, view: OrderView, width: number): Line[] {
  const { order, open } = view
  const name = orderedText(state, order.id)
  const some = open > 0 && open < order.count ? `  ${amountText(open, order.unit)} to come` : ''
  return numbered(
    numberOf(view),
    line(...chipColumn(orderSign(view), SIGN_WIDTH), ' ', strong(name), some),
    width,
  )
}

function tick(state: State, { order, open }: OrderView): Choice {
  const { id, unit } = order
  const name = orderedText(state, id)
  if (open === 0)
    return {
      says: `${name}: here already`,
      act: {
        do: 'say',
        what: `${name}: all of it is here already.`,
        cure: `"send back ${id} because ..." if it is wrong.`,
      },
    }
  return {
    says: `${name}: ${amountText(open, unit)} here`,
    act: {
      do: 'send',
      commands: [{ do: 'receive', order: id, into: { kind: 'place', place: 'bench' } }],
    },
  }
}

function numberOf({ order }: OrderView): number {
  return Number(order.id.slice(1))
}
