import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  freshGrid,
  interrupt,
  isUnderWay,
  nextTurn,
  type Pass,
  passOrder,
  type Tightening,
} from '../../src/plan/tightening.ts'
import { angle, backBy, backOff, check, snug, torque, witness } from '../support/commands.ts'

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

describe('the way round of a pass', () => {
  const round = { ...torque(20), order: ['1', '2', '3', '4'] }
  test.each<[string, Pass[], number, string]>([
    ['a torque goes in the order', [torque(20)], 0, '2 3 1 4'],
    ['a check goes in the order', [torque(20), check(20)], 1, '2 3 1 4'],
    ['backed off, it goes in reverse', [torque(20), backOff], 1, '4 1 3 2'],
    ['backed off by an angle too', [angle(90), backBy(180)], 1, '4 1 3 2'],
    ['and forwards again after that', [torque(20), backOff, torque(20)], 2, '2 3 1 4'],
    ['the marks go in the order', [torque(20), witness], 1, '2 3 1 4'],
    ['round and round where that is asked for', [torque(20), round], 1, '1 2 3 4'],
    [
      'eased before anything was turned on, it is the order of loosening',
      [backBy(90), backOff],
      1,
      '2 3 1 4',
    ],
  ])('%s', (_, kinds, pass, names) => {
    expect(passOrder({ passes: kinds, order }, pass).join(' ')).toBe(names)
  })
})

describe('each kind of pass, broken off', () => {
  const before = [torque(20), torque(30)]
  // [kind, turns done in it, abrupt, next bolt, in doubt]
  const rows = (pass: Pass, falls: boolean, doubt: boolean, names: string[]) =>
    [0, 1, 3].flatMap((through) =>
      [false, true].map((abrupt) => {
        const next = falls ? names[0] : names[through]
        return [pass.typed, pass, through, abrupt, next, doubt && (through > 0 || abrupt)] as const
      }),
    )
  const reverse = order.toReversed()

  test.each([
    ...rows(snug, true, false, order),
    ...rows(torque(40), true, false, order),
    ...rows(check(40), true, false, order),
    ...rows(angle(90), false, true, order),
    ...rows(backBy(180), false, true, reverse),
    ...rows(backOff, false, false, reverse),
    ...rows(witness, false, false, order),
  ])('%s after %3$i turns', (_, pass, through, abrupt, fastener, suspect) => {
    const grid = turnedTimes(8 + through, [...before, pass])
    interrupt(grid, abrupt)
    expect(nextTurn(grid)).toMatchObject({ pass: 2, fastener, suspect })
  })
})

describe('a bolt that is brought up to the others', () => {
  /** All through, but for one that begins again. */
  const behind = (fastener: string, kinds: Pass[]) => {
    const grid = turnedTimes(16, kinds)
    for (const through of grid.done) through.delete(fastener)
    return grid
  }

  test('goes through its passes alone, and a break takes no tick from those that are further on', () => {
    const grid = behind('1', passes)
    expect(nextTurn(grid)).toMatchObject({ pass: 0, fastener: '1' })
    interrupt(grid, false)
    expect(grid.done.map(({ size }) => size)).toEqual([3, 3, 3, 3])
  })

  test('the doubt about another is settled first, and no later break moves it', () => {
    const grid = turnedTimes(3, [angle(90)])
    interrupt(grid, false)
    grid.done[0]?.delete('2')
    expect(nextTurn(grid)).toMatchObject({ fastener: '4', suspect: true })
    interrupt(grid, true)
    expect(grid.suspect).toEqual({ pass: 0, fastener: '4' })
  })
})

// A mechanic with passes of every kind, called away at any moment, and honest about every doubt.
test('whatever the passes and the breaks: no bolt is ever turned twice by an angle, and all come through', () => {
  const kinds = fc.array(
    fc.constantFrom(snug, torque(20), check(20), angle(90), backBy(90), backOff, witness),
    {
      minLength: 1,
      maxLength: 5,
    },
  )
  const moments = fc.array(fc.constantFrom('turn', 'turn', 'turn', 'stop', 'cut', 'cut untold'), {
    maxLength: 60,
  })
  fc.assert(
    fc.property(kinds, fc.integer({ min: 1, max: 6 }), moments, (passKinds, bolts, story) => {
      const names = Array.from({ length: bolts }, (_, index) => `b${index + 1}`)
      const grid = turnedTimes(0, passKinds, names)
      const byHand = passKinds.map(() => new Map<string, number>())
      const hand = (pass: number, fastener: string) =>
        byHand[pass]?.set(fastener, (byHand[pass]?.get(fastener) ?? 0) + 1)
      const tick = () => {
        const next = nextTurn(grid)
        if (!next) return
        if (!next.suspect) hand(next.pass, next.fastener)
        else if (!byHand[next.pass]?.has(next.fastener)) {
          // Looked at, and found not turned.
          grid.suspect = null
          return
        }
        grid.done[next.pass]?.add(next.fastener)
        grid.suspect = null
      }
      for (const moment of story) {
        const next = nextTurn(grid)
        if (moment === 'turn') tick()
        // The bolt was turned, and the power went before anybody could say so.
        else if (moment === 'cut untold' && next && !next.suspect) hand(next.pass, next.fastener)
        if (moment !== 'turn') interrupt(grid, moment !== 'stop')
      }
      for (let left = bolts * passKinds.length * 2; left > 0 && nextTurn(grid); left -= 1) tick()
      expect(nextTurn(grid)).toBeNull()
      for (const [pass, turned] of byHand.entries()) {
        const { kind, ...more } = passKinds[pass] ?? { kind: 'snug' }
        if (kind !== 'angle' && !(kind === 'back-off' && 'degrees' in more)) continue
        expect([...turned].filter(([, times]) => times > 1)).toEqual([])
      }
    }),
    { numRuns: 1000 },
  )
})
