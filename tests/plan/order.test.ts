import fc from 'fast-check'
import { DirectedGraph } from 'graphology'
import { hasCycle, topologicalGenerations, topologicalSort } from 'graphology-dag'
import { describe, expect, test } from 'vitest'
import { beneath, buildNeeds, buildOrder, builtOnTop, type Steps } from '../../src/plan/order.ts'

type Step = {
  no: number
  way: 'both' | 'build' | 'after-start'
  after: number[]
  needs: number[]
  due?: string
}

const came = (no: number, ...after: number[]): Step => ({ no, way: 'both', after, needs: [] })
const added = (no: number, ...needs: number[]): Step => ({ no, way: 'build', after: [], needs })
const last = (no: number): Step => ({ ...added(no), due: 'last' })
const stepsOf = (...steps: Step[]): Steps => new Map(steps.map((step) => [step.no, step]))

describe('the way back', () => {
  test.each<[string, Step[], number[]]>([
    ['nothing came off', [], []],
    [
      'cover, chain, cams, one after the other: the last comes first',
      [came(1), came(2, 1), came(3, 2)],
      [3, 2, 1],
    ],
    ['two covers side by side: what came off last comes first', [came(1), came(2)], [2, 1]],
    [
      'a branch: both lie under 1, and 4 under both',
      [came(1), came(2, 1), came(3, 1), came(4, 2, 3)],
      [4, 3, 2, 1],
    ],
    ['a check between the cams and the cover', [came(1), came(2, 1), { ...added(3, 2) }], [2, 1, 3]],
    [
      'the cover waits for a check that was put under it',
      [{ ...came(1), needs: [3] }, came(2, 1), added(3, 2)],
      [2, 3, 1],
    ],
    ['checks of the way back come as they were added', [added(1), added(2)], [1, 2]],
    [
      'what comes after the first start comes last',
      [{ ...added(1), way: 'after-start' }, came(2), added(3)],
      [2, 3, 1],
    ],
    ['a last one comes after what is added after it', [came(1), last(2), added(3), came(4, 1)], [4, 1, 3, 2]],
    [
      'before what comes after the first start',
      [{ ...added(1), way: 'after-start' }, last(2), came(3)],
      [3, 2, 1],
    ],
    [
      'what the user puts behind it comes behind it',
      [came(1), last(2), added(3, 2), added(4, 3)],
      [1, 2, 3, 4],
    ],
    ['two of them, one after the other', [last(1), last(2), came(3)], [3, 1, 2]],
    ['two of them, and what is behind the first', [last(1), last(2), added(3, 1), came(4)], [4, 1, 2, 3]],
    [
      'due last after the first start is words, no more',
      [{ ...last(1), way: 'after-start' }, added(2)],
      [2, 1],
    ],
  ])('%s', (_, steps, order) => {
    expect(buildOrder(stepsOf(...steps))).toEqual({ order })
  })

  test('the last one needs by name only what nothing else needs', () => {
    const needs = buildNeeds(stepsOf(came(1), came(2, 1), added(3, 2), last(4), added(5)))
    expect(needs.get(4)).toEqual(new Set([1, 3, 5]))
    expect(beneath(needs, 4)).toEqual(new Set([1, 2, 3, 5]))
  })

  test.each<[string, Step[], number[]]>([
    ['a step that needs itself', [added(1, 1)], [1]],
    ['two that need each other', [added(1, 2), added(2, 1)], [1, 2]],
    [
      'three in a circle, and others beside it',
      [added(1), added(2, 4, 1), added(3, 2), added(4, 3), added(5, 4)],
      [2, 3, 4],
    ],
    ['strip order against an added need', [came(1), { ...came(2, 1), needs: [1] }], [1, 2]],
  ])('%s: named, not only refused', (_, steps, members) => {
    const result = buildOrder(stepsOf(...steps))
    expect('cycle' in result && [...result.cycle].sort()).toEqual(members)
  })
})

// The graph by which topological sorting is usually taught, after A. B. Kahn, "Topological sorting of large
// networks", Communications of the ACM 5 (11), 1962. The edges are from memory: 5 before 11, and so on.
const TEXTBOOK: [number, number][] = [
  [5, 11],
  [7, 11],
  [7, 8],
  [3, 8],
  [3, 10],
  [11, 2],
  [11, 9],
  [11, 10],
  [8, 9],
]

describe("Kahn's textbook graph", () => {
  const steps = (edges: [number, number][]) => {
    const numbers = [...new Set(edges.flat())]
    return stepsOf(
      ...numbers.map((no) => added(no, ...edges.filter(([, upper]) => upper === no).map(([lower]) => lower))),
    )
  }

  test('its generations, as the reference library gives them, come in order', () => {
    const reference = referenceOf(steps(TEXTBOOK))
    const generations = topologicalGenerations(reference).map((each) =>
      each.map(Number).sort((a, b) => a - b),
    )
    expect(generations).toEqual([
      [3, 5, 7],
      [8, 11],
      [2, 9, 10],
    ])
    const order = orderOf(steps(TEXTBOOK))
    for (const [lower, upper] of TEXTBOOK) expect(order.indexOf(lower)).toBeLessThan(order.indexOf(upper))
  })

  test('9 before 7 closes a circle through 7 and 9, and it is named', () => {
    const cyclic = steps([...TEXTBOOK, [9, 7]])
    const result = buildOrder(cyclic)
    if (!('cycle' in result)) throw new Error('no cycle found')
    expect(result.cycle).toEqual(expect.arrayContaining([7, 9]))
    expectCircle(cyclic, result.cycle)
  })

  test.each([
    [7, [2, 8, 9, 10, 11]],
    [11, [2, 9, 10]],
    [3, [8, 9, 10]],
    [2, []],
  ])('on top of %i stand %j', (no, onTop) => {
    expect([...builtOnTop(buildNeeds(steps(TEXTBOOK)), [no])].sort((a, b) => a - b)).toEqual(onTop)
  })
})

/** Strip and build steps whose order may point anywhere, themselves included: many have a circle. */
const anySteps = fc.integer({ min: 1, max: 12 }).chain((count) =>
  fc
    .array(
      fc.record({
        way: fc.constantFrom<Step['way']>('both', 'both', 'build', 'after-start'),
        after: fc.uniqueArray(fc.integer({ min: 1, max: count }), { maxLength: 2 }),
        needs: fc.uniqueArray(fc.integer({ min: 1, max: count }), { maxLength: 1 }),
      }),
      { minLength: count, maxLength: count },
    )
    .map((list) => stepsOf(...list.map((step, index) => ({ no: index + 1, ...step })))),
)

/** A strip-down as it happens: each step comes off after earlier ones, so that no circle can be. */
const stripDowns = fc
  .array(fc.array(fc.nat(30), { maxLength: 3 }), { minLength: 1, maxLength: 30, size: 'max' })
  .map((afters) =>
    stepsOf(
      ...afters.map((after, index) =>
        came(index + 1, ...new Set(after.map((each) => 1 + (each % (index || 1))).filter(() => index > 0))),
      ),
    ),
  )

describe('beside the reference library graphology-dag', () => {
  test('the same verdict on circles; every edge forward, or a circle that is one', () => {
    let cyclic = 0
    fc.assert(
      fc.property(anySteps, (steps) => {
        const reference = referenceOf(steps)
        const result = buildOrder(steps)
        expect('cycle' in result).toBe(hasCycle(reference))
        if ('cycle' in result) {
          cyclic += 1
          expectCircle(steps, result.cycle)
        } else expectForward(reference, result.order)
      }),
      { numRuns: 500 },
    )
    expect(cyclic).toBeGreaterThan(50)
  })

  test('a strip-down always has a way back, with each step once', () => {
    fc.assert(
      fc.property(stripDowns, (steps) => {
        const reference = referenceOf(steps)
        const order = orderOf(steps)
        expectForward(reference, order)
        expectForward(reference, topologicalSort(reference).map(Number))
        expect([...order].sort((a, b) => a - b)).toEqual([...steps.keys()])
      }),
      { numRuns: 300 },
    )
  })

  test('built on top and beneath are the closure of the edges, forward and back', () => {
    fc.assert(
      fc.property(stripDowns, fc.array(fc.nat(29), { minLength: 1, maxLength: 3 }), (steps, picks) => {
        const reference = referenceOf(steps)
        const needs = buildNeeds(steps)
        const from = picks.map((pick) => 1 + (pick % steps.size))
        const onTop = new Set(from.flatMap((no) => [...closure(no, (each) => reference.outNeighbors(each))]))
        expect(builtOnTop(needs, from)).toEqual(onTop)
        const first = from[0] as number
        expect(beneath(needs, first)).toEqual(closure(first, (each) => reference.inNeighbors(each)))
      }),
      { numRuns: 300 },
    )
  })
})

/** The graph of what comes before what, told from the steps in another way than the program does. */
function referenceOf(steps: Steps): DirectedGraph {
  const graph = new DirectedGraph({ allowSelfLoops: true })
  for (const no of steps.keys()) graph.addNode(no)
  for (const { no, way, after, needs } of steps.values()) {
    for (const lower of needs) graph.mergeEdge(lower, no)
    if (way === 'both') for (const earlier of after) graph.mergeEdge(no, earlier)
  }
  return graph
}

function expectForward(graph: DirectedGraph, order: number[]): void {
  expect(new Set(order).size).toBe(graph.order)
  graph.forEachEdge((_edge, _attributes, lower, upper) => {
    expect(order.indexOf(Number(lower))).toBeLessThan(order.indexOf(Number(upper)))
  })
}

/** Each of a circle needs the next, and the last the first. */
function expectCircle(steps: Steps, cycle: number[]): void {
  const graph = referenceOf(steps)
  expect(new Set(cycle).size).toBe(cycle.length)
  for (const [index, no] of cycle.entries()) {
    expect(graph.hasEdge(cycle[(index + 1) % cycle.length], no)).toBe(true)
  }
}

function closure(from: number, next: (node: string) => string[]): Set<number> {
  const found = new Set<string>()
  const walk = (node: string): void => {
    for (const other of next(node)) {
      if (found.has(other)) continue
      found.add(other)
      walk(other)
    }
  }
  walk(String(from))
  return new Set([...found].map(Number))
}

function orderOf(steps: Steps): number[] {
  const result = buildOrder(steps)
  if ('cycle' in result) throw new Error(`a cycle: ${result.cycle.join(' ')}`)
  return result.order
}
