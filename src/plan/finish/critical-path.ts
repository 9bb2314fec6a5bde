import { findCycle } from '../order.ts'

/** One piece of work in a plan. Times are whole minutes from now. */
export interface Activity<Id> {
  id: Id
  /** How long it takes: zero or more. */
  minutes: number
  /** What must be finished before it starts. What is not among the activities is taken as finished. */
  needs: Iterable<Id>
  /** It starts no earlier than this, as when a piece comes back only then. */
  notBefore?: number | undefined
}

/** When an activity starts and finishes, in whole minutes from now. */
export interface Times {
  earliestStart: number
  earliestFinish: number
  latestStart: number
  latestFinish: number
  /** How much later than its earliest it may start without making the whole later. */
  slack: number
  /** Without slack: what makes it later makes the whole later. */
  critical: boolean
}

export interface Schedule<Id> {
  times: ReadonlyMap<Id, Times>
  /** When the last activity finishes at the earliest. */
  finish: number
  /**
   * Critical activities, each of which starts as the one before it finishes, from the first to the last. A chain whose
   * first starts later than now begins with the wait for it. Alternatives come in the order of the activities.
   */
  chains: Id[][]
  /** Whether there are more chains than were asked for: their number may double with every choice on the way. */
  moreChains: boolean
}

interface Node<Id> {
  id: Id
  minutes: number
  notBefore: number
  needs: Node<Id>[]
  onTop: Node<Id>[]
  start: number
  latestFinish: number
}

/** The end of a chain, and the chain before it. */
interface Link<Id> {
  node: Node<Id>
  before: Link<Id> | null
}

/**
 * The critical path method: the earliest and latest times of every activity, and the chains that keep the whole from
 * finishing earlier, at most `mostChains` of them. As textbooks of planning teach it for activities on nodes.
 * Returns the activities of a cycle instead when there is one.
 */
export function criticalPath<Id>(
  activities: Iterable<Activity<Id>>,
  mostChains = 3,
): Schedule<Id> | { cycle: Id[] } {
  const nodes = network(activities)
  const ordered = scheduleForward(nodes)
  if (ordered.length < nodes.length) {
    const needs = new Map(nodes.map((node) => [node.id, new Set(node.needs.map(({ id }) => id))]))
    return { cycle: findCycle(needs, new Set(ordered.map(({ id }) => id))) }
  }
  const finish = ordered.reduce((latest, node) => Math.max(latest, finishOf(node)), 0)
  for (const node of ordered.reverse()) {
    node.latestFinish = node.onTop.reduce(
      (earliest, upper) => Math.min(earliest, upper.latestFinish - upper.minutes),
      finish,
    )
  }
  const chains: Id[][] = []
  const all = criticalChains(nodes)
  let next = all.next()
  for (; !next.done && chains.length < mostChains; next = all.next()) chains.push(next.value)
  return {
    times: new Map(nodes.map((node) => [node.id, timesOf(node)])),
    finish,
    chains,
    moreChains: !next.done,
  }
}

function network<Id>(activities: Iterable<Activity<Id>>): Node<Id>[] {
  const nodes = new Map<Id, Node<Id>>()
  const given = [...activities]
  for (const { id, minutes, notBefore = 0 } of given) {
    nodes.set(id, { id, minutes, notBefore, needs: [], onTop: [], start: 0, latestFinish: 0 })
  }
  for (const { id, needs } of given) {
    const node = nodes.get(id)
    for (const need of new Set(needs)) {
      const lower = nodes.get(need)
      if (!node || !lower) continue
      node.needs.push(lower)
      lower.onTop.push(node)
    }
  }
  return [...nodes.values()]
}

/** Sets the earliest starts, and gives the nodes that no cycle keeps from starting, each after all it needs. */
function scheduleForward<Id>(nodes: Node<Id>[]): Node<Id>[] {
  const waiting = new Map(nodes.map((node) => [node, node.needs.length]))
  const ordered = nodes.filter((node) => node.needs.length === 0)
  for (const node of ordered) {
    node.start = node.needs.reduce(
      (latest, lower) => Math.max(latest, finishOf(lower)),
      Math.max(0, node.notBefore),
    )
    for (const upper of node.onTop) {
      const left = (waiting.get(upper) ?? 0) - 1
      waiting.set(upper, left)
      // The loop takes up what is appended while it runs.
      if (left === 0) ordered.push(upper)
    }
  }
  return ordered
}

function* criticalChains<Id>(nodes: Node<Id>[]): Generator<Id[], void> {
  for (const first of nodes) {
    if (!isCritical(first) || first.needs.some((lower) => isNext(lower, first))) continue
    const open: Link<Id>[] = [{ node: first, before: null }]
    for (let link = open.pop(); link; link = open.pop()) {
      const { node } = link
      const next = node.onTop.filter((upper) => isNext(node, upper))
      if (next.length === 0) yield idsOf(link)
      for (const upper of next.reverse()) open.push({ node: upper, before: link })
    }
  }
}

function idsOf<Id>(last: Link<Id>): Id[] {
  const ids: Id[] = []
  for (let link: Link<Id> | null = last; link; link = link.before) ids.push(link.node.id)
  return ids.reverse()
}

/** Whether a critical activity starts as one that it needs finishes, which then is critical as well. */
function isNext<Id>(lower: Node<Id>, upper: Node<Id>): boolean {
  return isCritical(upper) && finishOf(lower) === upper.start
}

function isCritical<Id>(node: Node<Id>): boolean {
  return node.latestFinish === finishOf(node)
}

function finishOf<Id>({ start, minutes }: Node<Id>): number {
  return start + minutes
}

function timesOf<Id>(node: Node<Id>): Times {
  const { start, minutes, latestFinish } = node
  const latestStart = latestFinish - minutes
  return {
    earliestStart: start,
    earliestFinish: finishOf(node),
    latestStart,
    latestFinish,
    slack: latestStart - start,
    critical: isCritical(node),
  }
}
