import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { OrderSum } from '../lines/sum.ts'
import type { OrderBy, TighteningFacts, TighteningId } from '../plan/facts.ts'
import { layoutFor, layoutOf, type PatternFault, patternOf } from '../plan/pattern.ts'
import { drawLayout } from '../trade/position-drawing/draw-layout.ts'
import type { LayoutShape, PositionLayout } from '../trade/position-layout/position-layout.ts'
import { proposeLayout } from '../trade/position-layout/propose-layout.ts'
import { compareOrders, loosening, type OrderDifference } from '../trade/tightening-order/compare-orders.ts'
import {
  inOrder,
  type OrderRule,
  type OrderSource,
  orderSource,
  proposeOrder,
} from '../trade/tightening-order/order.ts'

export type WorkedOrder =
  | {
      isFound: false
      fault: PatternFault | ({ code: 'rule-not-for-shape'; rule: OrderRule; shape: LayoutShape } & Others)
    }
  | ({
      isFound: true
      rule: OrderRule
      source: OrderSource
      order: string[]
      loosening: string[]
      /** The drawing of the positions is only what their names suggest. */
      isProposed: boolean
      /** The orders that were set for these fasteners, beside that of the rule. */
      set: SetOrder[]
      /** The positions as they lie, each with its turn. */
      drawing: string[]
    } & Others)

/** Other rules that fit the shape. */
interface Others {
  others: OrderRule[]
}

/** An order that was set: it holds, whatever the rule says. */
export interface SetOrder {
  tightening: TighteningId
  orderBy: OrderBy | null
  /** Null where it is for other fasteners than those drawn. */
  difference: OrderDifference | null
}

/** Works out the order of tightening of a pattern in the record or of a layout, by a rule or by the usual one. */
export function workOutOrder(state: State, { of, rule: asked }: OrderSum): WorkedOrder {
  const found =
    'layout' in of ? { layout: of.layout, isProposed: false, tightenings: [] } : drawn(state, of.piece)
  if ('code' in found) return { isFound: false, fault: found }
  const { layout, isProposed, tightenings } = found
  const usual = proposeOrder(layout)
  const rule = asked ?? usual.rule
  const order = inOrder(layout, rule)
  const others = [usual.rule, ...usual.others].filter((other) => other !== rule)
  if (!order)
    return { isFound: false, fault: { code: 'rule-not-for-shape', rule, shape: layout.shape, others } }
  return {
    isFound: true,
    rule,
    source: orderSource(rule, order.length),
    order,
    loosening: loosening(order),
    others,
    isProposed,
    set: tightenings.map((tightening) => setOrder(layout, tightening, rule)),
    drawing: drawingOf(layout, order),
  }
}

function drawn(state: State, piece: PieceId) {
  const pattern = patternOf(state, piece)
  if ('code' in pattern) return pattern
  const names = pattern.places.map(({ position }) => position)
  const known = layoutFor(layoutOf(state, piece), names)
  const pieces = new Set(pattern.places.map((place) => place.piece))
  return {
    layout: known ?? proposeLayout(names).layout,
    isProposed: known === undefined,
    tightenings: [...state.tightenings.values()].filter((each) =>
      [each.piece, ...(each.with ?? [])].some((id) => pieces.has(id)),
    ),
  }
}

function setOrder(
  layout: PositionLayout,
  { id, order, orderBy }: TighteningFacts,
  rule: OrderRule,
): SetOrder {
  const own = layoutFor(layout, order)
  return {
    tightening: id,
    orderBy: orderBy ?? null,
    difference: own ? compareOrders(own, order, rule) : null,
  }
}

/** As wide and high as the smallest screen shows at once. */
const room = { width: 68, height: 16 }

function drawingOf(layout: PositionLayout, order: readonly string[]): string[] {
  const cells = new Map(order.map((position, index) => [position, { says: `#${index + 1}` }]))
  return drawLayout(layout, cells, room).rows.map((row) =>
    row
      .map(({ text }) => text)
      .join('')
      .trimEnd(),
  )
}
