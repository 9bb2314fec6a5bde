import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  freshGrid,
  interrupt,
  isUnderWay,
  nextTurn,
  type Pass,
  type Tightening,
} from '../../src/plan/tightening.ts'
import { angle, snug, torque } from '../support/commands.ts'

// A square of four head bolts, crosswise; the values are invented.
const order = ['2', '3', '1', '4']
const passes = [snug, torque(20), angle(60), angle(90)]

/** A grid with so many turns done in order. */
function turnedTimes(count: number, kinds: Pass[] = passes, names: string[] = order): Tightening {
  const tightening: Tightening = { passes: kinds, order: names, done: freshGrid(kinds), suspect: null }
  for (let turn = 0; turn < count; turn += 1) {
    const next = nextTurn(tightening)
    if (next) tightening.done[next.pass]?.add(next.fastener)
  }
  return tightening
}

describe('the next bolt', () => {
  test.each([
    [0, { pass: 0, fastener: '2', through: 0 }],
    [1, { pass: 0, fastener: '3', through: 1 }],
    [3, { pass: 0, fastener: '4', through: 3 }],
    [4, { pass: 1, fastener: '2', through: 0 }],
    [15, { pass: 3, fastener: '4', through: 3 }],
  ])('after %i turns', (count, next) => {
    expect(nextTurn(turnedTimes(count))).toEqual({ ...next, suspect: false })
  })

  test('after the last there is none', () => {
    expect(nextTurn(turnedTimes(16))).toBeNull()
  })

  test('a pass with a gap goes on at the gap', () => {
    const gap = turnedTimes(16)
    gap.done[1]?.delete('3')
    expect(nextTurn(gap)).toEqual({ pass: 1, fastener: '3', through: 3, suspect: false })
  })
})

describe('work is broken off', () => {
  // Every cell of the grid, with and without a word: [turns done, abrupt, next pass, next bolt, in doubt].
  test.each<[number, boolean, number, string, boolean]>([
    // Nothing turned in this pass: nothing falls.
    [0, false, 0, '2', false],
    [0, true, 0, '2', false],
    // A torque pass, snugging too, starts again at its first bolt.
    [1, false, 0, '2', false],
    [3, true, 0, '2', false],
    [4, false, 1, '2', false],
    [5, true, 1, '2', false],
    [7, false, 1, '2', false],
    // An angle pass keeps its ticks. Who says that he stops has finished his bolt; but has he ticked it?
    [8, false, 2, '2', false],
    [8, true, 2, '2', true],
    [9, false, 2, '3', true],
    [10, true, 2, '1', true],
    [11, false, 2, '4', true],
    // Between two angle passes only a break without a word leaves the first bolt in doubt.
    [12, false, 3, '2', false],
    [12, true, 3, '2', true],
    [15, true, 3, '4', true],
  ])(
    'after %i turns, abrupt: %s -> pass %i, bolt %s, in doubt: %s',
    (count, abrupt, pass, fastener, suspect) => {
      const grid = turnedTimes(count)
      interrupt(grid, abrupt)
      expect(nextTurn(grid)).toMatchObject({ pass, fastener, suspect })
    },
  )

  test('after the last turn nothing is in doubt', () => {
    const grid = turnedTimes(16)
    interrupt(grid, true)
    expect(nextTurn(grid)).toBeNull()
    expect(grid.suspect).toBeNull()
  })

  test('twice: the doubt stays with the same bolt, and no other tick falls', () => {
    const grid = turnedTimes(10)
    interrupt(grid, true)
    interrupt(grid, false)
    expect(grid.suspect).toEqual({ pass: 2, fastener: '1' })
    expect(grid.done.map((pass) => pass.size)).toEqual([4, 4, 2, 0])
  })

  const grids = fc
    .record({
      kinds: fc.array(fc.constantFrom(snug, torque(20), angle(90)), { minLength: 1, maxLength: 4 }),
      bolts: fc.integer({ min: 1, max: 10 }),
      share: fc.nat(40),
      abrupt: fc.boolean(),
    })
    .map(({ kinds, bolts, share, abrupt }) => {
      const names = Array.from({ length: bolts }, (_, index) => `b${index + 1}`)
      return { kinds, names, count: share % (kinds.length * bolts + 1), abrupt }
    })

  test('whatever the grid: torque from the first bolt, angle never again on one that was ticked', () => {
    fc.assert(
      fc.property(grids, ({ kinds, names, count, abrupt }) => {
        const grid = turnedTimes(count, kinds, names)
        interrupt(grid, abrupt)
        const next = nextTurn(grid)
        const pass = Math.floor(count / names.length)
        const within = count % names.length
        if (pass === kinds.length) {
          expect(next).toBeNull()
          return
        }
        const isAngle = kinds[pass]?.kind === 'angle'
        expect(next?.pass).toBe(pass)
        expect(next?.fastener).toBe(isAngle ? names[within] : names[0])
        expect(next?.suspect).toBe(isAngle && (within > 0 || abrupt))
      }),
      { numRuns: 500 },
    )
  })
})

describe('under way, so that a break now would leave something in doubt', () => {
  test.each([
    ['nothing turned', turnedTimes(0), false],
    ['in a torque pass', turnedTimes(5), true],
    ['between two torque passes', turnedTimes(4), false],
    ['before an angle pass that follows another', turnedTimes(8), true],
    ['in an angle pass', turnedTimes(9), true],
    ['all through', turnedTimes(16), false],
    ['already in doubt', { ...turnedTimes(9), suspect: { pass: 2, fastener: '3' } }, false],
    ['an angle pass that is the first, not begun', turnedTimes(0, [angle(90)]), false],
  ])('%s', (_, grid, underWay) => {
    expect(isUnderWay(grid)).toBe(underWay)
  })
})
