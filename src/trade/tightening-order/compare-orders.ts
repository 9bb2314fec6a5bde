import type { PositionLayout } from '../position-layout/position-layout.ts'
import { inOrder, ORDER_RULES, type OrderRule } from './order.ts'

/** How an order of the manual stands to that of a rule. The manual's order always holds; this is only shown. */
export type OrderDifference =
  | { code: 'same' }
  /** The rule backwards: an order of loosening, perhaps. */
  | { code: 'reversed' }
  /** The same rule, begun at another place or going the other way. */
  | { code: 'mirrored' }
  /** From the place `at`, counted from 1; null where an order has ended. `isBy`: the other rule that it follows. */
  | { code: 'different'; at: number; manual: string | null; ruled: string | null; isBy: OrderRule | null }

/** Compares the manual's order with that of a rule; null where the rule does not fit the shape of the layout. */
export function compareOrders(
  layout: PositionLayout,
  manual: readonly string[],
  rule: OrderRule,
): OrderDifference | null {
  const ruled = inOrder(layout, rule)
  if (!ruled) return null
  if (isSame(manual, ruled)) return { code: 'same' }
  if (isSame(manual, loosening(ruled))) return { code: 'reversed' }
  if (isMirrored(layout, manual, rule)) return { code: 'mirrored' }
  const at = ruled.findIndex((position, place) => position !== manual[place])
  const place = at < 0 ? ruled.length : at
  const isBy = ORDER_RULES.find((other) => other !== rule && isMirrored(layout, manual, other))
  return {
    code: 'different',
    at: place + 1,
    manual: manual[place] ?? null,
    ruled: ruled[place] ?? null,
    isBy: isBy ?? null,
  }
}

/** The order of loosening: the exact reverse, common practice, and in steps as the tightening. */
export function loosening(order: readonly string[]): string[] {
  return order.toReversed()
}

function isMirrored(layout: PositionLayout, manual: readonly string[], rule: OrderRule): boolean {
  return seenOtherwise(layout, rule).some((other) => isSame(manual, inOrder(other, rule) ?? []))
}

/** The layout as seen from its other sides; and where a rule begins at the first place, begun at every other one. */
function seenOtherwise({ shape, places }: PositionLayout, rule: OrderRule): PositionLayout[] {
  const turn = (x: number, y: number, isAcross = false) => ({
    shape,
    places: places.map((place) => ({
      position: place.position,
      x: x * (isAcross ? place.y : place.x),
      y: y * (isAcross ? place.x : place.y),
    })),
  })
  if (rule === 'clockwise' || rule === 'star') return [turn(1, 1), turn(-1, 1)].flatMap(fromEachPlace)
  return [1, -1].flatMap((x) => [1, -1].flatMap((y) => [turn(x, y), turn(x, y, true)]))
}

function fromEachPlace({ shape, places }: PositionLayout): PositionLayout[] {
  return places.map((_, first) => ({ shape, places: [...places.slice(first), ...places.slice(0, first)] }))
}

function isSame(one: readonly string[], other: readonly string[]): boolean {
  return one.length === other.length && one.every((position, place) => position === other[place])
}
