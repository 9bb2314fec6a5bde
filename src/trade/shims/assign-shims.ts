import { munkres } from 'munkres'
import { type Criterion, lexicographicCosts } from './lexicographic-cost.ts'
import { fits, halfTicksOff, type NeededShim, neededShim } from './needed-shim.ts'
import type { MeasuredValve } from './valve.ts'

/** Shims by their sizes in millimetres: each of those on the bench is there once, those for sale any number of times. */
export interface ShimStock {
  bench: readonly number[]
  forSale: readonly number[]
}

/**
 * What comes second, after buying the fewest: to touch the fewest valves, or to come nearest the middle of every
 * range. Touching the fewest is what a mechanic wants as a rule: no camshaft is pulled for a clearance that is right.
 */
export type SecondWish = 'fewest-touched' | 'nearest-middle'

/** Which shim a valve gets. */
export type Taken =
  | { take: 'keep' }
  | { take: 'valve'; position: string }
  | { take: 'bench'; size: number }
  | { take: 'buy'; size: number }
  | { take: 'none' }

interface Choice {
  taken: Taken
  criteria: readonly Criterion[]
}

/**
 * A shim for each valve, in the order of the valves, from those fitted, those on the bench and those for sale. Every
 * shim brings its valve within its range, and each one on hand is used at most once. In this order: the fewest valves
 * without a shim, the fewest bought, the fewest touched, the least sum of squared distances from the middle of the
 * range; the last two change places where `second` says so. Squares, because one valve at the very edge of its range is
 * worse than two that are a little off. The best there is: an assignment problem, solved in whole numbers.
 * A valve without clearance takes none: how far it stands open is not known.
 */
export function assignShims(
  valves: readonly MeasuredValve[],
  stock: ShimStock,
  second: SecondWish = 'fewest-touched',
): Taken[] {
  const onHand: { taken: Taken; size: number; of: number | null }[] = [
    ...valves.map(({ position, fitted }, of) => ({
      taken: { take: 'valve' as const, position },
      size: fitted,
      of,
    })),
    ...stock.bench.map((size) => ({ taken: { take: 'bench' as const, size }, size, of: null })),
  ]
  const order = (choice: { none: number; bought: number; touched: number; off: number }): Criterion[] =>
    second === 'fewest-touched'
      ? [choice.none, choice.bought, choice.touched, choice.off ** 2]
      : [choice.none, choice.bought, choice.off ** 2, choice.touched]
  const rows = valves.map((valve, row) => {
    const needed = valve.clearance > 0 ? neededShim(valve) : null
    const choices = onHand.map(({ taken, size, of }): Choice | null => {
      if (!needed || !fits(needed, size)) return null
      const isOwn = of === row
      const off = halfTicksOff(needed, size)
      return {
        taken: isOwn ? { take: 'keep' } : taken,
        criteria: order({ none: 0, bought: 0, touched: isOwn ? 0 : 1, off }),
      }
    })
    const size = needed && nearestForSale(needed, stock.forSale)
    const otherwise: Choice =
      needed && size !== null
        ? {
            taken: { take: 'buy', size },
            criteria: order({ none: 0, bought: 1, touched: 1, off: halfTicksOff(needed, size) }),
          }
        : { taken: { take: 'none' }, criteria: order({ none: 1, bought: 0, touched: 0, off: 0 }) }
    // What is for sale has no end, so that each valve has a column of its own for the best of it.
    return [...choices, ...valves.map((_, column) => (column === row ? otherwise : null))]
  })
  const taken: Taken[] = valves.map(() => ({ take: 'none' }))
  for (const [row, column] of valves.length === 0 ? [] : munkres(lexicographicCosts(rows))) {
    taken[row] = rows[row]?.[column]?.taken ?? { take: 'none' }
  }
  return taken
}

function nearestForSale(needed: NeededShim, forSale: readonly number[]): number | null {
  let nearest: number | null = null
  for (const size of forSale) {
    if (!fits(needed, size)) continue
    if (nearest === null || halfTicksOff(needed, size) < halfTicksOff(needed, nearest)) nearest = size
  }
  return nearest
}
