import fc from 'fast-check'
import { DirectedGraph } from 'graphology'
import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { Gates } from '../../src/plan/gates.ts'
import { leftovers, undoToReach } from '../../src/plan/leftovers.ts'
import {
  addStep,
  aidIn,
  at,
  begin,
  count,
  done,
  drain,
  endStrip,
  lose,
  mark,
  matchedOff,
  move,
  off,
  override,
  putOn,
  replace,
  snug,
  strip,
  supply,
  tightening,
  toolOut,
} from '../support/commands.ts'
import { given } from '../support/journal.ts'

const leftoversAfter = (...commands: Command[]) => leftovers(new Gates(given(...commands).state))

describe('the trial balance, one line for each thing that is not as it must be', () => {
  test.each<[string, Command[], object[]]>([
    ['an untouched machine', [], []],
    [
      '6 bolts in bag 1',
      [off(6, 'bolts'), endStrip],
      [
        { code: 'piece-off', piece: 'p1', count: 6, place: 'c1', step: 1 },
        { code: 'step-open', step: 1 },
      ],
    ],
    [
      '5 home, 1 forgotten in the bag, and the step overridden shut',
      [off(6, 'bolts'), endStrip, putOn('p1', undefined, 5), override('finish 1'), done(1)],
      [{ code: 'piece-off', piece: 'p1', count: 1, place: 'c1', undo: [1] }],
    ],
    [
      'one was missing when the job began',
      [off(6, 'bolts', { found: 5 }), endStrip, override('start 1'), putOn('p1', undefined, 5)],
      [
        { code: 'piece-short', piece: 'p1', count: 1, step: 1 },
        { code: 'step-open', step: 1 },
      ],
    ],
    [
      'one snapped in its hole: a fault, and one short',
      [
        off(6, 'studs', { broken: { kind: 'snapped', count: 1 } }),
        endStrip,
        override('start 1'),
        putOn('p1', undefined, 5),
      ],
      [
        { code: 'piece-short', piece: 'p1', count: 1 },
        { code: 'fault-open', fault: 'x1' },
        { code: 'step-open', step: 1 },
      ],
    ],
    [
      'the old gasket is still in the bag, the new one is in',
      [off(1, 'gasket'), endStrip, replace('p1', 1), putOn('p2'), done(1)],
      [{ code: 'old-lying', piece: 'p1', count: 1, place: 'c1' }],
    ],
    [
      'one bolt too many was bought',
      [off(2, 'bolts'), endStrip, supply('p1', 1), putOn('p1'), done(1)],
      [{ code: 'old-lying', piece: 'p1', count: 1, place: 'c1' }],
    ],
    [
      'one too many, declared spare',
      [off(2, 'bolts'), endStrip, supply('p1', 1, at('spare')), putOn('p1'), done(1)],
      [],
    ],
    [
      'a lost bolt that was replaced is lost all the same',
      [off(2, 'bolts'), endStrip, lose('p1', 1), supply('p1', 1), putOn('p1'), done(1)],
      [{ code: 'piece-lost', piece: 'p1', count: 1 }],
    ],
    [
      'a rag in the port, under a cover that was closed over every gate',
      [
        strip('valve cover off'),
        off(1, 'cover'),
        strip('ports'),
        aidIn('rag', 2),
        endStrip,
        override('start 1'),
        override('look 1'),
        putOn('p1'),
        done(1),
      ],
      [
        { code: 'aid-in', piece: 'p2', count: 2, place: 'machine', step: 2, undo: [1] },
        { code: 'step-open', step: 2 },
      ],
    ],
    [
      'a magnet on the bench',
      [toolOut('magnet'), endStrip],
      [{ code: 'tool-out', piece: 'p1', place: 'bench' }],
    ],
    [
      'a rag that was thrown away is no leftover, one that is lost is',
      [
        aidIn('rag', 2),
        endStrip,
        move('p1', at('scrap'), { count: 1, from: 'machine' }),
        lose('p1', 1),
        done(1),
      ],
      [{ code: 'piece-lost', piece: 'p1', count: 1 }],
    ],
    [
      'fluid, mark, tightening',
      [off(1, 'plug'), drain('oil'), mark('dot up'), tightening('p1', [snug]), endStrip],
      [
        { code: 'piece-off', piece: 'p1' },
        { code: 'fluid-open', fluid: 'f1' },
        { code: 'mark-open', mark: 'm1' },
        { code: 'tighten-open', tightening: 't1' },
        { code: 'step-open', step: 1 },
      ],
    ],
    [
      'the same, waived with reasons, and the plug home',
      [
        off(1, 'plug'),
        drain('oil'),
        mark('dot up'),
        tightening('p1', [snug]),
        endStrip,
        override('f1'),
        override('m1'),
        override('t1'),
        putOn('p1'),
        done(1),
      ],
      [],
    ],
    [
      'a count that does not agree',
      [off(4, 'bolts'), endStrip, count(1, ['p1', 3]), count(1, ['p1', 3])],
      [{ code: 'piece-off', count: 4 }, { code: 'count-open', difference: 'd2' }, { code: 'step-open' }],
    ],
    [
      'a check of the way back; one after the start is none of it',
      [addStep('turn by hand'), addStep('leaks', { way: 'after-start' })],
      [{ code: 'step-open', step: 1 }],
    ],
    ['a check waived', [addStep('turn by hand'), override('check 1')], []],
    ['a strip step still open', [strip('look inside')], [{ code: 'step-open', step: 1 }]],
    ['a strip step with nothing to put back', [strip('look inside'), endStrip], []],
  ])('%s', (_, commands, expected) => {
    const found = leftoversAfter(...commands)
    expect(found).toEqual(expected.map((each) => expect.objectContaining(each)))
  })

  test('what hides deepest is named first', () => {
    const job = given(
      strip('valve cover off'),
      off(4, 'cover bolts'),
      strip('cams out'),
      matchedOff(['I1', 'I2'], 'cap'),
      endStrip,
      begin(2),
      putOn('p2', 'I1'),
      override('finish 2'),
      done(2),
      override('look 1'),
      putOn('p1', undefined, 3),
    )
    const found = leftovers(new Gates(job.state))
    expect(found.slice(0, 2)).toEqual([
      { code: 'piece-off', piece: 'p3', count: 1, place: 'c2', step: 2, undo: [1, 2] },
      { code: 'piece-off', piece: 'p1', count: 1, place: 'c1', step: 1, undo: [] },
    ])
  })
})

/** A strip-down with branches, in which each step took one piece off. */
const branches = fc.array(fc.array(fc.nat(12), { minLength: 1, maxLength: 3 }), {
  minLength: 2,
  maxLength: 9,
  size: 'max',
})

test('the steps to undo are those on top, near and far, the outermost first', () => {
  fc.assert(
    fc.property(branches, fc.nat(8), fc.nat(20), (afters, pick, steps) => {
      const graph = new DirectedGraph()
      const apart = afters.flatMap((after, index) => {
        const lower = index + 1
        graph.addNode(lower)
        const earlier = index === 0 ? [] : [...new Set(after.map((each) => 1 + (each % index)))]
        for (const upper of earlier) graph.addEdge(lower, upper)
        return [strip('bracket', { after: earlier, hides: false }), off(1, `bolt ${lower}`)]
      })
      let job = given(...apart, endStrip)
      // Back up again, only so far as chance has it.
      for (let step = 0; step < steps % (afters.length + 1); step += 1) {
        const ready = new Gates(job.state).ready()[0] as number
        job = job.and(putOn(`p${ready}`), done(ready))
      }
      const goal = 1 + (pick % afters.length)
      const undo = undoToReach(new Gates(job.state), goal)
      const built = (no: number) => job.state.steps.get(no)?.built === 'done'
      expect(new Set(undo)).toEqual(new Set([goal, ...closure(graph, goal)].filter(built)))
      graph.forEachEdge((_edge, _attributes, lower, upper) => {
        const [under, over] = [undo.indexOf(Number(lower)), undo.indexOf(Number(upper))]
        if (under >= 0 && over >= 0) expect(over).toBeLessThan(under)
      })
    }),
    { numRuns: 150 },
  )
})

function closure(graph: DirectedGraph, from: number): Set<number> {
  const found = new Set<number>()
  const walk = (node: number): void => {
    for (const upper of graph.outNeighbors(node).map(Number)) {
      if (!found.has(upper)) walk(upper)
      found.add(upper)
    }
  }
  walk(from)
  return found
}
