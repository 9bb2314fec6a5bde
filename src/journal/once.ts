import type { Pass } from '../plan/tightening.ts'
import type { PlacedPosition } from '../trade/position-layout/position-layout.ts'

/** Throws where an order names a fastener twice, or one of its passes goes round others than the order names. */
export function orderedOnce({ order, passes }: { order: readonly string[]; passes: readonly Pass[] }): void {
  once(order)
  for (const { order: own = order } of passes) {
    once(own)
    const other = [...own, ...order].find((name) => !own.includes(name) || !order.includes(name))
    if (other !== undefined) throw new Error(`a pass does not go round the fasteners of the order: ${other}`)
  }
}

/** Throws where a drawing shows a position twice, or two in one place. */
export function drawnOnce(places: readonly PlacedPosition[]): void {
  once(places.map(({ position }) => position))
  once(places.map(({ x, y }) => `${x}, ${y}`))
}

function once(names: readonly string[]): void {
  const twice = names.length > new Set(names).size && names.find((name, index) => names.indexOf(name) < index)
  if (typeof twice === 'string') throw new Error(`${twice} is there twice`)
}
