import { describe, expect, test } from 'vitest'
import { wholeValves } from '../../../src/trade/shims/whole-valves.ts'

const inlet = { least: 0.13, most: 0.17 }
const exhaust = { least: 0.22, most: 0.28 }
const known = [
  { position: 'I1', clearance: 0.14, fitted: 2.45, wanted: inlet },
  { position: 'E1', clearance: 0.26, fitted: null, wanted: exhaust },
  { position: 'E2', clearance: null, fitted: 2.5, wanted: null },
]

describe('the valves to work on', () => {
  test('those said, as they were said', () => {
    const valves = [{ position: 'I1', clearance: 0.2, fitted: 2.4 }]
    expect(wholeValves({ valves, wanted: [{ of: 'I', least: 0.1, most: 0.15 }] }, known)).toEqual([
      { position: 'I1', clearance: 0.2, fitted: 2.4, wanted: { least: 0.1, most: 0.15 } },
    ])
  })

  test('what was not said is taken from the record', () => {
    const valves = [{ position: 'i1', clearance: 0.2, fitted: null }]
    expect(wholeValves({ valves, wanted: [] }, known)).toEqual([
      { position: 'I1', clearance: 0.2, fitted: 2.45, wanted: inlet },
    ])
  })

  test('the range for a position goes before that for its letters, and that before the one for all', () => {
    const valves = ['I1', 'I2', 'E1', '2E'].map((position) => ({ position, clearance: 0.2, fitted: 2.4 }))
    const wanted = [
      { of: null, least: 1, most: 1 },
      { of: 'i', least: 2, most: 2 },
      { of: 'I2', least: 3, most: 3 },
      { of: 'E', least: 4, most: 4 },
    ]
    const whole = wholeValves({ valves, wanted }, [])
    expect(Array.isArray(whole) && whole.map((valve) => valve.wanted.least)).toEqual([2, 3, 4, 4])
  })

  test('ranges by numbers', () => {
    const valves = ['1', '4', '5'].map((position) => ({ position, clearance: 0.2, fitted: 2.4 }))
    const wanted = [
      { of: '1..4', least: 1, most: 1 },
      { of: '5', least: 2, most: 2 },
    ]
    const whole = wholeValves({ valves, wanted }, [])
    expect(Array.isArray(whole) && whole.map((valve) => valve.wanted.least)).toEqual([1, 1, 2])
  })

  test('where none is said, all that were measured', () => {
    const said = { valves: [], wanted: [] }
    expect(wholeValves(said, known.slice(0, 1))).toHaveLength(1)
    expect(wholeValves(said, known)).toEqual({ lacks: 'fitted', positions: ['E1'] })
    expect(wholeValves(said, [])).toEqual({ lacks: 'clearance', positions: [] })
  })

  test('a missing limit is named by its valves', () => {
    const valves = ['I1', 'E7', 'E8'].map((position) => ({ position, clearance: 0.2, fitted: 2.4 }))
    expect(wholeValves({ valves, wanted: [] }, known)).toEqual({ lacks: 'wanted', positions: ['E7', 'E8'] })
  })
})
