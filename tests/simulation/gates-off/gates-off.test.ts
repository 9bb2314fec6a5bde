import { beforeAll, describe, expect, test } from 'vitest'
import { startProgram } from '../../helpers/child-program.ts'
import { ALL_MISTAKES } from '../mistakes/all-mistakes.ts'
import { BLOCKS } from './blocks.ts'
import { buildWithSwitches } from './build-with-switches.ts'
import type { GatesOffReport } from './reports.ts'
import { SWITCHES } from './switches.ts'
import { WALLS } from './walls.ts'

let report: GatesOffReport = { climbs: [], beside: [], held: [] }

beforeAll(async () => {
  const program = await buildWithSwitches('tests/simulation/gates-off/programs/run-without-gates.ts', [
    ...SWITCHES,
    ...BLOCKS,
  ])
  const running = startProgram(program)
  try {
    const [said = ''] = await running.said(1)
    report = JSON.parse(said)
  } finally {
    running.kill()
    program.remove()
  }
}, 120_000)

describe.each(WALLS.map((wall, nth) => ({ ...wall, nth })))('$mistake ($at)', ({ nth, gates, then }) => {
  const climbed = (off: number) => report.climbs.find((climb) => climb.wall === nth && climb.off === off)

  test.each(gates.map(([gate, seen], off) => ({ gate, seen, off })))('$gate: $seen', ({ off, seen }) =>
    expect(climbed(off)?.seen).toEqual([seen]),
  )

  test('with every gate on the first start is cleared in the end, with no false block', () =>
    expect(climbed(0)).toMatchObject({ falseBlocks: [], cleared: true }))

  if (then === 'passes') {
    test('with these off the first start is cleared over it', () => {
      expect(climbed(gates.length)?.seen).toEqual([expect.stringMatching(/^(?:asked|unseen)$/)])
      expect(climbed(gates.length)?.cleared).toBe(true)
    })
  } else {
    test(`with these off it gets as far as: ${then}`, () =>
      expect(climbed(gates.length)?.seen).toEqual([then]))
  }
})

test('a gate that is off lets through only what it stands before', () => {
  expect(report.beside.flatMap(({ seen }) => seen).length).toBeGreaterThan(5 * report.beside.length)
  const passed = report.beside.filter(
    ({ seen, falseBlocks, cleared }) => seen.includes('unseen') || falseBlocks.length > 0 || !cleared,
  )
  expect(passed).toEqual([])
})

test('each gate that can be switched off stands in a wall', () => {
  const used = new Set<string>(WALLS.flatMap(({ gates }) => gates.map(([gate]) => gate)))
  expect(SWITCHES.map(({ gate }) => gate).filter((gate) => !used.has(gate))).toEqual([])
})

test('each mistake that is made stands before a wall', () =>
  expect(new Set(WALLS.map(({ mistake }) => mistake))).toEqual(new Set(ALL_MISTAKES.map(({ name }) => name))))

describe('a job without a mistake', () => {
  test('goes through with no false block', () =>
    expect(report.held.find(({ by }) => by === null)).toEqual({
      by: null,
      seen: [],
      refusals: [],
      falseBlocks: [],
      cleared: true,
    }))

  test.each(BLOCKS)('$gate: a false block', ({ gate }) => {
    const held = report.held.find(({ by }) => by === gate)
    expect(held).toMatchObject({ seen: [], cleared: gate === 'no bag goes on now' })
    expect(held?.falseBlocks).not.toEqual([])
  })
})
