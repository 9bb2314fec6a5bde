import type { Place } from '../ledger/place.ts'
import { arrowCells, orderCells, togetherCells, valueCells } from '../trade/position-drawing/cells.ts'
import type { Cell } from '../trade/position-drawing/drawn-cell.ts'
import type { LayoutView } from './layout-view.ts'

/** What a drawing of a pattern says at its positions: what belongs there, where it lies now, or whose turn it is. */
export type PositionSet = 'belongs' | 'lies' | 'order'

/** The cells of a drawing; `placeText` says a place shortly. A size that all share is no news. */
export function positionCells(
  { layout, sizes, lies, order }: LayoutView,
  set: PositionSet,
  placeText: (place: Place) => string,
): Map<string, Cell> {
  switch (set) {
    case 'belongs':
      return togetherCells(valueCells(shortSizes(sizes)), arrowCells(layout?.places ?? []))
    case 'lies':
      return valueCells(new Map([...lies].map(([position, place]) => [position, placeText(place)])))
    case 'order':
      return orderCells(order)
    default:
      return set satisfies never
  }
}

/** The thread alone where that tells the sizes apart: `M6x40` of `M6x40 hex 10`. */
function shortSizes(sizes: ReadonlyMap<string, string>): Map<string, string> {
  const all = new Set(sizes.values())
  if (all.size < 2) return new Map()
  const short = (size: string) => size.split(' ')[0] ?? size
  const isTold = new Set([...all].map(short)).size === all.size
  return new Map([...sizes].map(([position, size]) => [position, isTold ? short(size) : size]))
}
