import type { StepFacts } from './facts.ts'

type Ordered = Pick<StepFacts, 'no' | 'way' | 'after' | 'needs' | 'due'>

export type Steps = ReadonlyMap<number, Ordered>

/** When a step of the way back alone is due that comes after every other one before the first start. */
export const LAST = 'last'

/** Whether a step comes last of the way back, whatever is added or comes off after it was planned. */
export function isLast({ way, due }: Pick<StepFacts, 'way' | 'due'>): boolean {
  return way === 'build' && due === LAST
}

/**
 * What must be built before each step. What came off later goes back earlier: a step that came off
 * after this one is built before it. To that come the needs the user added; and what comes last needs all the rest.
 */
export function buildNeeds(steps: Steps): Map<number, Set<number>> {
  const needs = new Map<number, Set<number>>()
  for (const step of steps.values()) needs.set(step.no, new Set(step.needs))
  for (const step of steps.values()) {
    if (step.way !== 'both') continue
    for (const earlier of step.after) needs.get(earlier)?.add(step.no)
  }
  const last = [...steps.values()].filter(isLast)
  if (last.length > 0) comeLast(needs, steps, last)
  return needs
}

/** Puts the last steps above all others but those that the user put behind one; named are those that nothing else needs. */
function comeLast(needs: Map<number, Set<number>>, steps: Steps, last: readonly Ordered[]): void {
  const notBefore = builtOnTop(
    needs,
    last.map(({ no }) => no),
  )
  for (const { no } of last) notBefore.add(no)
  const before = [...steps.values()]
    .filter(({ no, way }) => way !== 'after-start' && !notBefore.has(no))
    .map(({ no }) => no)
  const lower = new Set(before.flatMap((no) => [...(needs.get(no) ?? [])]))
  for (const { no } of last) for (const each of before) if (!lower.has(each)) needs.get(no)?.add(each)
}

/** The steps built on top of the given ones, near and far: what must come off again to reach them. */
export function builtOnTop(
  needs: ReadonlyMap<number, ReadonlySet<number>>,
  from: Iterable<number>,
): Set<number> {
  const onTop = new Map<number, number[]>()
  for (const [no, needed] of needs) {
    for (const lower of needed) {
      const list = onTop.get(lower)
      if (list) list.push(no)
      else onTop.set(lower, [no])
    }
  }
  return reach(from, (no) => onTop.get(no) ?? [])
}

/** The steps that lie beneath a step, near and far. */
export function beneath(needs: ReadonlyMap<number, ReadonlySet<number>>, no: number): Set<number> {
  return reach([no], (step) => needs.get(step) ?? [])
}

/**
 * The steps in an order in which each comes after all it needs. Where the needs leave a choice, what came
 * off last comes first, and steps of the way back alone come in the order they were added.
 * Returns the steps of a cycle instead when there is one.
 */
export function buildOrder(steps: Steps): { order: number[] } | { cycle: number[] } {
  const needs = buildNeeds(steps)
  const waiting = new Map([...needs].map(([no, needed]) => [no, needed.size]))
  const onTop = new Map<number, number[]>()
  for (const [no, needed] of needs) {
    for (const lower of needed) onTop.set(lower, [...(onTop.get(lower) ?? []), no])
  }
  const rank = (no: number) => {
    const step = steps.get(no)
    if (step?.way === 'both') return -no
    return step?.way === 'build' ? no : 1_000_000 + no
  }
  const ready = [...waiting].filter(([, count]) => count === 0).map(([no]) => no)
  const order: number[] = []
  while (ready.length > 0) {
    ready.sort((a, b) => rank(b) - rank(a))
    const no = ready.pop() as number
    order.push(no)
    for (const upper of onTop.get(no) ?? []) {
      const left = (waiting.get(upper) ?? 0) - 1
      waiting.set(upper, left)
      if (left === 0) ready.push(upper)
    }
  }
  return order.length === needs.size ? { order } : { cycle: findCycle(needs, new Set(order)) }
}

/** A cycle among what an order left over: each needs the next, and the last the first. */
export function findCycle<Id>(needs: ReadonlyMap<Id, ReadonlySet<Id>>, ordered: ReadonlySet<Id>): Id[] {
  const path: Id[] = []
  let no = [...needs.keys()].find((candidate) => !ordered.has(candidate))
  while (no !== undefined && !path.includes(no)) {
    path.push(no)
    no = [...(needs.get(no) ?? [])].find((needed) => !ordered.has(needed))
  }
  return no === undefined ? path : path.slice(path.indexOf(no))
}

function reach(from: Iterable<number>, next: (no: number) => Iterable<number>): Set<number> {
  const found = new Set<number>()
  const open = [...from]
  for (let no = open.pop(); no !== undefined; no = open.pop()) {
    for (const other of next(no)) {
      if (found.has(other)) continue
      found.add(other)
      open.push(other)
    }
  }
  return found
}
