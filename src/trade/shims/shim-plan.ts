import { assignShims, type SecondWish, type ShimStock, type Taken } from './assign-shims.ts'
import { clearanceWith, fits, type NeededShim, neededShim } from './needed-shim.ts'
import { type NoShim, whyNoShim } from './no-shim.ts'
import type { MeasuredValve } from './valve.ts'

export interface PlannedValve extends MeasuredValve {
  /** Null where nothing can be said: a valve without clearance. */
  needed: NeededShim | null
  /** Whether it is within its range as measured. */
  isWithin: boolean
  taken: Taken
  /** The shim that it gets and the clearance that this leaves, in millimetres; null where it gets none. */
  size: number | null
  willBe: number | null
  /** Null unless it gets none. */
  why: NoShim | null
}

/**
 * One piece of work. `exchange`: each valve takes the shim of the next, and the last that of the first. `pass-on`: each
 * takes the shim of the next, the last one from the bench, a bought one or, for the time being, none; the shim of the
 * first is left over.
 */
export type ShimWork =
  | { work: 'exchange'; positions: string[] }
  | { work: 'pass-on'; positions: string[]; last: Extract<Taken, { take: 'bench' | 'buy' | 'none' }> }

/** What to do about the clearances of a set of valves; lengths in millimetres. */
export interface ShimPlan {
  valves: PlannedValve[]
  /** In an order in which it can be carried out; valves that keep their shims, or only lack one, are not in it. */
  work: ShimWork[]
  /** What to buy, by ascending size. */
  buy: { size: number; count: number }[]
  /** Shims on hand that no valve takes; `from` is the valve that one comes out of, null for the bench. */
  over: { from: string | null; size: number }[]
}

/** Plans which shim goes where: see `assignShims` for what is best. No position may be there twice. */
export function planShims(
  valves: readonly MeasuredValve[],
  stock: ShimStock,
  second: SecondWish = 'fewest-touched',
): ShimPlan {
  const taken = assignShims(valves, stock, second)
  const toBeHad = [...valves.map(({ fitted }) => fitted), ...stock.bench, ...stock.forSale]
  const fittedAt = new Map(valves.map(({ position, fitted }) => [position, fitted]))
  const planned = valves.map((valve, at): PlannedValve => {
    const choice = taken[at] ?? { take: 'none' }
    const size = sizeOf(choice, valve, fittedAt)
    const needed = valve.clearance > 0 ? neededShim(valve) : null
    return {
      ...valve,
      needed,
      isWithin: needed !== null && fits(needed, valve.fitted),
      taken: choice,
      size,
      willBe: size === null ? null : clearanceWith(valve, size),
      why: choice.take === 'none' ? whyNoShim(valve, toBeHad) : null,
    }
  })
  return {
    valves: planned,
    work: workOf(planned),
    buy: boughtOf(planned),
    over: overOf(planned, stock.bench),
  }
}

function sizeOf(
  taken: Taken,
  { fitted }: MeasuredValve,
  fittedAt: ReadonlyMap<string, number>,
): number | null {
  switch (taken.take) {
    case 'keep':
      return fitted
    case 'valve':
      return fittedAt.get(taken.position) ?? null
    case 'bench':
    case 'buy':
      return taken.size
    case 'none':
      return null
    default:
      return taken satisfies never
  }
}

function workOf(valves: readonly PlannedValve[]): ShimWork[] {
  const byPosition = new Map(valves.map((valve) => [valve.position, valve]))
  const giving = new Set(valves.flatMap(({ taken }) => (taken.take === 'valve' ? [taken.position] : [])))
  const done = new Set<string>()
  const follow = (first: PlannedValve): PlannedValve[] => {
    const chain: PlannedValve[] = []
    for (let valve: PlannedValve | undefined = first; valve && !done.has(valve.position); ) {
      chain.push(valve)
      done.add(valve.position)
      valve = valve.taken.take === 'valve' ? byPosition.get(valve.taken.position) : undefined
    }
    return chain
  }
  const work: ShimWork[] = []
  // A chain begins at the valve whose shim no other takes; what is left when all chains are gone runs in circles.
  for (const valve of valves.filter(({ position }) => !giving.has(position))) {
    const chain = follow(valve)
    const last = chain.at(-1)?.taken
    if (!last || last.take === 'keep' || last.take === 'valve') continue
    if (chain.length === 1 && last.take === 'none') continue
    work.push({ work: 'pass-on', positions: chain.map(({ position }) => position), last })
  }
  for (const valve of valves.filter(({ position, taken }) => taken.take === 'valve' && !done.has(position))) {
    if (done.has(valve.position)) continue
    work.push({ work: 'exchange', positions: follow(valve).map(({ position }) => position) })
  }
  return work.sort((one, other) => rank(one) - rank(other))
}

/** What can be done at once goes first, what waits for the shop last. */
function rank(work: ShimWork): number {
  if (work.work === 'exchange') return 0
  return { bench: 1, buy: 2, none: 3 }[work.last.take]
}

function boughtOf(valves: readonly PlannedValve[]): ShimPlan['buy'] {
  const counts = new Map<number, number>()
  for (const { taken } of valves) {
    if (taken.take === 'buy') counts.set(taken.size, (counts.get(taken.size) ?? 0) + 1)
  }
  return [...counts].map(([size, count]) => ({ size, count })).sort((a, b) => a.size - b.size)
}

function overOf(valves: readonly PlannedValve[], bench: readonly number[]): ShimPlan['over'] {
  const giving = new Set(valves.flatMap(({ taken }) => (taken.take === 'valve' ? [taken.position] : [])))
  // A valve for which there is none keeps the shim that it has until there is one, unless another takes it.
  const out = valves.filter(
    ({ position, taken }) => taken.take !== 'keep' && taken.take !== 'none' && !giving.has(position),
  )
  const left = [...bench]
  for (const { taken } of valves) {
    if (taken.take === 'bench') left.splice(left.indexOf(taken.size), 1)
  }
  return [
    ...out.map(({ position, fitted }) => ({ from: position, size: fitted })),
    ...left.map((size) => ({ from: null, size })),
  ]
}
