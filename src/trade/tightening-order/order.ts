import type { LayoutShape, PositionLayout } from '../position-layout/position-layout.ts'
import { clockwise, type FromMiddle, fromMiddle } from './middle.ts'
import { alternating, crosswise, oppositeOutwards, spiral } from './outwards.ts'
import { type StarSource, star, starSource } from './star.ts'

/** The rules by which fasteners are tightened one after the other. */
export const ORDER_RULES = ['spiral', 'crosswise', 'row', 'star', 'clockwise', 'outwards'] as const
export type OrderRule = (typeof ORDER_RULES)[number]

/** An order that follows from how the fasteners lie. The manual's own order always goes before it. */
export interface ProposedOrder {
  order: string[]
  rule: OrderRule
  source: OrderSource
  /** Other rules that fit the shape. */
  others: OrderRule[]
}

export type OrderSource = StarSource

/** The rules that fit a shape, the usual one first. */
const rulesOf: Record<LayoutShape, readonly [OrderRule, ...OrderRule[]]> = {
  row: ['row'],
  grid: ['crosswise', 'spiral', 'clockwise'],
  circle: ['star', 'clockwise'],
  free: ['outwards', 'clockwise', 'star'],
}

/** The positions of a layout in the order of a rule; null where the rule does not fit the shape. */
export function inOrder(layout: PositionLayout, rule: OrderRule): string[] | null {
  if (!rulesOf[layout.shape].includes(rule)) return null
  return turned(fromMiddle(layout), rule).map(({ position }) => position)
}

/** The usual order of a shape, with its source and the other rules that fit. */
export function proposeOrder(layout: PositionLayout): ProposedOrder {
  const [rule, ...others] = rulesOf[layout.shape]
  const order = turned(fromMiddle(layout), rule).map(({ position }) => position)
  return { order, rule, source: orderSource(rule, order.length), others }
}

/** Where a rule for so many fasteners is from. */
export function orderSource(rule: OrderRule, count: number): OrderSource {
  return rule === 'star' ? starSource(count) : 'common-practice'
}

function turned(places: readonly FromMiddle[], rule: OrderRule): FromMiddle[] {
  switch (rule) {
    case 'row':
      return alternating(places)
    case 'spiral':
      return spiral(places)
    case 'crosswise':
      return crosswise(places)
    case 'outwards':
      return oppositeOutwards(places)
    case 'clockwise':
      return clockwise(places)
    case 'star': {
      const around = clockwise(places.filter(({ distance }) => distance > 0))
      const middle = places.filter(({ distance }) => distance === 0)
      return [...middle, ...star(around.length).flatMap((turn) => around[turn] ?? [])]
    }
    default:
      return rule satisfies never
  }
}
