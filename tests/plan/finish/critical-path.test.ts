import fc from 'fast-check'
import { DirectedGraph } from 'graphology'
import { hasCycle } from 'graphology-dag'
import { describe, expect, test } from 'vitest'
import { type Activity, criticalPath, type Schedule } from '../../../src/plan/finish/critical-path.ts'

type Work = Activity<string>

/** Activities as the handouts write them: `B 3 A` takes 3 and needs A. */
function table(text: string): Work[] {
  return text.split(';').map((row) => {
    const [id = '', minutes, needs = ''] = row.trim().split(' ')
    return { id, minutes: Number(minutes), needs: needs.split(',').filter(Boolean) }
  })
}

function scheduleOf<Id>(activities: Activity<Id>[], mostChains = Infinity): Schedule<Id> {
  const schedule = criticalPath(activities, mostChains)
  if ('cycle' in schedule) throw new Error(`a cycle: ${schedule.cycle.join(' ')}`)
  return schedule
}

/** `A 0 4 0 4`: earliest start and finish, latest start and finish. */
const rows = ({ times }: Schedule<string>) =>
  [...times].map(
    ([id, { earliestStart, earliestFinish, latestStart, latestFinish }]) =>
      `${id} ${earliestStart} ${earliestFinish} ${latestStart} ${latestFinish}`,
  )
const slackOf = ({ times }: Schedule<string>) =>
  Object.fromEntries([...times].filter(([, { slack }]) => slack !== 0).map(([id, { slack }]) => [id, slack]))

const assembly = table('A 6; B 2 A; C 2 A; D 3 B; F 2 C; E 4 D,F; G 1 E')
const foundry = table('A 2; B 3; C 2 A; D 4 B; E 4 C; F 3 C; G 5 D,E; H 2 F,G')
const eleven = table('A 4; B 6 A; C 3 A; D 6 B; E 14 D; F 5 C; G 2 E,F; H 2 G; I 3 G; J 4 H,I; K 2 J')
const eight = table('A 4; B 3 A; C 5 A; D 2 A; E 5 B,C; F 6 C,D; G 4 E,F; H 3 G')
const laser = table('A 7; B 8; C 3 A; D 1 A; E 4 B; F 5 B; G 11 C,E; H 7 D,F')

describe('published examples', () => {
  test.each<[string, Work[], number, string[], Record<string, number>]>([
    // A course handout on the design and assembly of a product.
    ['design and assembly', assembly, 16, ['ABDEG'], { C: 1, F: 1 }],
    // Heizer and Render, Operations Management, project of a foundry that needs a filter; from memory.
    ['foundry', foundry, 15, ['ACEGH'], { B: 1, D: 1, F: 6 }],
    // Slides of a university course on project scheduling: two networks, with all four times of most activities.
    ['course slides, eleven activities', eleven, 41, ['ABDEGIJK'], { C: 18, F: 18, H: 1 }],
    ['course slides, eight activities', eight, 22, ['ACFGH'], { B: 3, D: 3, E: 1 }],
    // An exercise of a textbook of quantitative analysis: building a laser scanning machine. The slack was worked out.
    ['laser scanning machine', laser, 23, ['BEG'], { A: 2, C: 2, D: 8, F: 3, H: 3 }],
  ])('%s', (_, activities, finish, chains, slack) => {
    const schedule = scheduleOf(activities)
    expect(schedule.finish).toBe(finish)
    expect(schedule.chains.map((chain) => chain.join(''))).toEqual(chains)
    expect(slackOf(schedule)).toEqual(slack)
    const critical = [...schedule.times].filter(([, times]) => times.critical).map(([id]) => id)
    expect(critical.join('')).toBe(chains[0])
  })

  test('the four times that the course slides print', () => {
    expect(rows(scheduleOf(eleven))).toEqual([
      'A 0 4 0 4',
      'B 4 10 4 10',
      'C 4 7 22 25',
      'D 10 16 10 16',
      'E 16 30 16 30',
      'F 7 12 25 30',
      'G 30 32 30 32',
      'H 32 34 33 35',
      'I 32 35 32 35',
      'J 35 39 35 39',
      'K 39 41 39 41',
    ])
    expect(rows(scheduleOf(eight))).toEqual([
      'A 0 4 0 4',
      'B 4 7 7 10',
      'C 4 9 4 9',
      'D 4 6 7 9',
      'E 9 14 10 15',
      'F 9 15 9 15',
      'G 15 19 15 19',
      'H 19 22 19 22',
    ])
  })

  test('what is last may finish with the whole: a page of answers misprints 20 for H of the laser machine', () => {
    // The page takes the earliest finish of H for its latest, and still gives 23 for the whole.
    expect(scheduleOf(laser).times.get('H')).toMatchObject({
      earliestStart: 13,
      earliestFinish: 20,
      latestStart: 16,
      latestFinish: 23,
    })
  })
})

describe('small cases', () => {
  test('no activities', () => {
    expect(criticalPath([])).toEqual({ times: new Map(), finish: 0, chains: [], moreChains: false })
  })

  test('a part that comes back later holds up what needs it, and the wait is part of the chain', () => {
    const late = [
      { id: 'clean', minutes: 30, needs: [] },
      { id: 'head on', minutes: 60, needs: ['clean'], notBefore: 240 },
      { id: 'cover on', minutes: 20, needs: ['head on'] },
    ]
    const { times, finish, chains } = scheduleOf(late)
    expect({ finish, chains }).toEqual({ finish: 320, chains: [['head on', 'cover on']] })
    expect(times.get('clean')).toMatchObject({ earliestFinish: 30, latestFinish: 240, slack: 210 })
    expect(times.get('head on')).toMatchObject({ earliestStart: 240, slack: 0, critical: true })
  })

  test('a part that comes back before it is wanted, or is here already, holds up nothing', () => {
    const works = table('A 30; B 60 A')
    const here = works.map((work) => ({ ...work, notBefore: work.id === 'B' ? 30 : -500 }))
    expect(scheduleOf(here)).toEqual(scheduleOf(works))
  })

  test('what takes no time is a link of the chain like any other', () => {
    const { finish, chains } = scheduleOf(table('A 0; B 5 A; C 0 B; D 3'))
    expect({ finish, chains }).toEqual({ finish: 5, chains: [['A', 'B', 'C']] })
  })

  test('where nothing takes time all is critical', () => {
    const { finish, chains } = scheduleOf(table('A 0; B 0 A; C 0'))
    expect({ finish, chains }).toEqual({ finish: 0, chains: [['A', 'B'], ['C']] })
  })

  test('what is not in the plan is taken as finished; said twice is needed once', () => {
    const works = [
      { id: 2, minutes: 5, needs: [1, 3, 3] },
      { id: 3, minutes: 4, needs: [] },
    ]
    expect(scheduleOf(works)).toMatchObject({ finish: 9, chains: [[3, 2]] })
  })

  test('chains beyond those asked for are not given, but told of', () => {
    // Ten times a choice between two that take the same: 1024 chains.
    const works = Array.from({ length: 10 }, (_, at) => [
      { id: `${at}a`, minutes: 1, needs: at ? [`${at - 1}a`, `${at - 1}b`] : [] },
      { id: `${at}b`, minutes: 1, needs: at ? [`${at - 1}a`, `${at - 1}b`] : [] },
    ]).flat()
    const two = scheduleOf(works, 2)
    expect(two.chains.map((chain) => chain.slice(-2).join(' '))).toEqual(['8a 9a', '8a 9b'])
    expect(two.moreChains).toBe(true)
    expect(scheduleOf(works, 1023).moreChains).toBe(true)
    expect(scheduleOf(works, 1024)).toMatchObject({ chains: { length: 1024 }, moreChains: false })
  })

  test.each<[string, Work[], string]>([
    ['needs itself', table('A 1 A'), 'A'],
    ['two need each other', table('A 1 B; B 1 A'), 'AB'],
    ['three in a circle, others before and behind it', table('A 1; B 2 D,A; C 1 B; D 1 C; E 1 D'), 'BCD'],
  ])('a cycle is named: %s', (_, activities, members) => {
    const result = criticalPath(activities)
    expect('cycle' in result && [...result.cycle].sort().join('')).toBe(members)
  })

  test('a long chain', () => {
    const works = Array.from({ length: 20_000 }, (_, id) => ({ id, minutes: 1, needs: [id - 1] }))
    const { finish, chains } = scheduleOf(works.reverse())
    expect(finish).toBe(20_000)
    expect(chains[0]?.length).toBe(20_000)
  })
})

/** Activities that need earlier ones only, told in any order. Small figures, so that ties are common. */
const plans = fc
  .array(
    fc.record({
      minutes: fc.nat(4),
      needs: fc.array(fc.nat(11), { maxLength: 3 }),
      notBefore: fc.oneof(
        { weight: 5, arbitrary: fc.constant(undefined) },
        { weight: 1, arbitrary: fc.nat(12) },
      ),
      place: fc.nat(99),
    }),
    { minLength: 1, maxLength: 11, size: 'max' },
  )
  .map((list) =>
    list
      .map(({ needs, ...rest }, id) => ({ id, needs: needs.filter((need) => need < id), ...rest }))
      .sort((a, b) => a.place - b.place),
  )

describe('beside every way through the plan, tried out', () => {
  test('the finish is the longest way; a delay costs nothing up to the slack, and its excess after that', () => {
    let waited = 0
    fc.assert(
      fc.property(plans, (plan) => {
        const { finish, times } = scheduleOf(plan)
        expect(finish).toBe(longestWay(plan))
        if (longestWay(plan.map((each) => ({ ...each, notBefore: 0 }))) < finish) waited += 1
        for (const { id, minutes } of plan) {
          const found = times.get(id)
          if (!found) throw new Error(`no times of ${id}`)
          const startingAt = (notBefore: number) =>
            longestWay(plan.map((each) => (each.id === id ? { ...each, notBefore } : each)))
          const upTo = longestWay(plan, id)
          expect(found.earliestStart).toBe(upTo - minutes)
          expect(found.earliestFinish).toBe(upTo)
          expect(found.latestFinish).toBe(found.latestStart + minutes)
          expect(found.slack).toBe(found.latestStart - found.earliestStart)
          expect(found.critical).toBe(found.slack === 0)
          expect(startingAt(found.latestStart)).toBe(finish)
          expect(startingAt(found.latestStart + 1)).toBe(finish + 1)
        }
      }),
      { numRuns: 400, seed: 1 },
    )
    // The plans must not all be such that waiting plays no part in them, nor all such that it does.
    expect(waited).toBeGreaterThan(50)
    expect(waited).toBeLessThan(350)
  })

  test('the chains are the ways that take the whole time and cannot be lengthened', () => {
    let several = 0
    fc.assert(
      fc.property(plans, (plan) => {
        const { finish, chains, times } = scheduleOf(plan)
        const longest = everyWay(plan).filter(({ end }) => end === finish)
        const whole = longest.filter(({ ids }) => !longest.some((other) => isLonger(other.ids, ids)))
        const texts = chains.map((chain) => chain.join(' '))
        expect([...texts].sort()).toEqual(whole.map(({ ids }) => ids.join(' ')).sort())
        const critical = [...times].filter(([, each]) => each.critical).map(([id]) => id)
        expect(new Set(chains.flat())).toEqual(new Set(critical))
        if (chains.length > 1) several += 1
      }),
      { numRuns: 400, seed: 2 },
    )
    expect(several).toBeGreaterThan(50)
  })

  test('the order in which activities are told changes no time', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        const told = scheduleOf(plan)
        const back = scheduleOf(plan.toReversed())
        expect(new Map([...back.times].sort(([a], [b]) => a - b))).toEqual(
          new Map([...told.times].sort(([a], [b]) => a - b)),
        )
        expect(back.finish).toBe(told.finish)
      }),
      { numRuns: 200, seed: 3 },
    )
  })

  test('a cycle is found where the reference library graphology-dag finds one, and is one', () => {
    const anyPlan = fc
      .array(fc.uniqueArray(fc.nat(9), { maxLength: 2 }), { minLength: 10, maxLength: 10 })
      .map((list) => list.map((needs, id) => ({ id, minutes: 1, needs })))
    let cyclic = 0
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const graph = new DirectedGraph({ allowSelfLoops: true })
        for (const { id } of plan) graph.addNode(id)
        for (const { id, needs } of plan) for (const need of needs) graph.addEdge(need, id)
        const result = criticalPath(plan)
        expect('cycle' in result).toBe(hasCycle(graph))
        if (!('cycle' in result)) return
        cyclic += 1
        expect(new Set(result.cycle).size).toBe(result.cycle.length)
        for (const [at, id] of result.cycle.entries()) {
          expect(graph.hasEdge(result.cycle[(at + 1) % result.cycle.length], id)).toBe(true)
        }
      }),
      { numRuns: 400, seed: 4 },
    )
    expect(cyclic).toBeGreaterThan(50)
    expect(cyclic).toBeLessThan(400)
  })
})

interface Way {
  ids: number[]
  end: number
}

/** Every way through a plan, from any activity on: it starts when its first may, and goes on without a pause. */
function everyWay(plan: Activity<number>[]): Way[] {
  const from = ({ id, minutes }: Activity<number>, start: number): Way[] => {
    const end = start + minutes
    const rest = plan.filter(({ needs }) => [...needs].includes(id)).flatMap((upper) => from(upper, end))
    return [{ ids: [id], end }, ...rest.map((way) => ({ ids: [id, ...way.ids], end: way.end }))]
  }
  return plan.flatMap((first) => from(first, first.notBefore ?? 0))
}

/** How long the longest way takes, or the longest that ends with the given activity. */
function longestWay(plan: Activity<number>[], last?: number): number {
  return Math.max(
    ...everyWay(plan)
      .filter(({ ids }) => last === undefined || ids.at(-1) === last)
      .map(({ end }) => end),
  )
}

/** Whether a way holds another in one piece, and more. */
function isLonger(longer: number[], way: number[]): boolean {
  return longer.length > way.length && ` ${longer.join(' ')} `.includes(` ${way.join(' ')} `)
}
