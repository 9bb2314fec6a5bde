import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import type { State } from '../../src/journal/state.ts'
import { readLine } from '../../src/lines/read-line.ts'
import { valvesOnRecord } from '../../src/plan/valves.ts'
import { given, record } from '../support/journal.ts'

type Step = string | Command

/** A job told in lines, and in commands where there is no line. */
function job(...steps: Step[]): State {
  let { state, entries } = given()
  for (const step of steps) {
    const reading = typeof step === 'string' ? readLine(step, state) : null
    if (reading && reading.kind !== 'commands') throw new Error(`no commands: ${step}`)
    ;({ state, entries } = record(reading?.commands ?? [step as Command], entries))
  }
  return state
}

function measured(
  readings: Record<string, number>,
  limits?: [number, number],
  name = 'valve clearances',
): Command {
  return {
    do: 'measure',
    name,
    measurement: {
      kind: 'valve-clearance',
      readings: Object.entries(readings).map(([at, mm]) => ({ at, mm, typed: String(mm) })),
      ...(limits && { limits: { leastMm: limits[0], mostMm: limits[1], typed: limits.join('..') } }),
    },
  }
}

const sizes = (ids: Record<string, string>): Command => ({
  do: 'size',
  sizes: Object.entries(ids).map(([piece, size]) => ({ piece: piece as `p${number}`, size })),
})

const stripped: Step[] = ['begin shims out', 'off shims I1..I2 into bench', sizes({ p1: '2.45', p2: '2.40' })]

describe('valves on record', () => {
  test('measured before the shims came off: with those that came off', () => {
    const state = job('begin cover off', measured({ I1: 0.14, I2: 0.2 }, [0.13, 0.17]), ...stripped)
    const wanted = { least: 0.13, most: 0.17 }
    const valves = [
      { position: 'I1', clearance: 0.14, fitted: 2.45, wanted, shim: 'p1' },
      { position: 'I2', clearance: 0.2, fitted: 2.4, wanted, shim: 'p2' },
    ]
    expect(valvesOnRecord(state, [])).toEqual(valves)
  })

  test('and still so when they have changed places since', () => {
    const before = job(measured({ I1: 0.14, I2: 0.2 }), ...stripped, 'swap shims I1 I2 because so')
    expect(valvesOnRecord(before, []).map(({ shim, fitted }) => [shim, fitted])).toEqual([
      ['p1', 2.45],
      ['p2', 2.4],
    ])
  })

  test('measured again after that: with those that are there then', () => {
    const state = job(
      measured({ I1: 0.14, I2: 0.2 }),
      ...stripped,
      'swap shims I1 I2 because so',
      'new shim I2 size 2.50',
      measured({ I1: 0.15, i2: 0.16 }),
    )
    expect(valvesOnRecord(state, [])).toEqual([
      { position: 'I1', clearance: 0.15, fitted: 2.4, wanted: null, shim: 'p2' },
      { position: 'I2', clearance: 0.16, fitted: 2.5, wanted: null, shim: 'p3' },
    ])
  })

  test('a valve measured again keeps the limits that were said before', () => {
    const state = job(
      measured({ I1: 0.1, I2: 0.2 }, [0.13, 0.17]),
      measured({ I1: 0.12 }, undefined, 'again'),
    )
    expect(valvesOnRecord(state, [])).toEqual([
      { position: 'I1', clearance: 0.12, fitted: null, wanted: { least: 0.13, most: 0.17 }, shim: null },
      { position: 'I2', clearance: 0.2, fitted: null, wanted: { least: 0.13, most: 0.17 }, shim: null },
    ])
  })

  test('two heads with the same positions leave the shim open', () => {
    const state = job(
      ...stripped,
      'end',
      'begin other head',
      'off other shims I1..I2 into bench',
      measured({ I1: 0.14 }),
    )
    expect(valvesOnRecord(state, [])).toMatchObject([{ position: 'I1', fitted: null, shim: null }])
  })

  test('one limit is no range, and what is no clearance at a valve is none of it', () => {
    const one: Command = {
      do: 'measure',
      name: 'valve clearances',
      measurement: {
        kind: 'valve-clearance',
        readings: [
          { mm: 0.14, typed: '0.14', at: 'I1' },
          { mm: 0.3, typed: '0.3' },
        ],
        limits: { leastMm: 0.13, typed: 'at least 0.13' },
      },
    }
    const bore: Command = {
      do: 'measure',
      name: 'bore',
      measurement: { kind: 'size', readings: [{ mm: 75, typed: '75', at: 'I2' }] },
    }
    expect(valvesOnRecord(job(one, bore), [])).toEqual([
      { position: 'I1', clearance: 0.14, fitted: null, wanted: null, shim: null },
    ])
  })
})
