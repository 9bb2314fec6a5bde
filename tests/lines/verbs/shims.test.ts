import { describe, expect, test } from 'vitest'
import { findVerb, readLine } from '../../../src/lines/read-line.ts'
import type { Reading } from '../../../src/lines/reading.ts'
import type { Sum } from '../../../src/lines/sum.ts'
import { given, record } from '../../support/journal.ts'
import { nothing, told } from '../told.ts'

const twin = [
  'begin buckets and shims out',
  'off buckets I1..I2,E1..E2 into bench',
  'off shims I1..I2,E1..E2 into bench',
  'size shims: I1 2.45, I2 2,40, E1: 2.50; E2 248',
]

const inlet = { least: 0.13, most: 0.17 }
const exhaust = { least: 0.22, most: 0.28 }

describe('shims', () => {
  test('all that is said', () => {
    const line =
      'shims I1 0.14 2.45, E1 0,26 2,50 wanted I 0.13..0.17 E 0.22..0.28 for sale 2.45..2.50 step 0.05 bench 2.40 nearest'
    expect(sumOf(readLine(line, nothing))).toEqual({
      sum: 'shims',
      valves: [
        { position: 'I1', clearance: 0.14, fitted: 2.45, wanted: inlet },
        { position: 'E1', clearance: 0.26, fitted: 2.5, wanted: exhaust },
      ],
      stock: { bench: [2.4], forSale: [2.45, 2.5] },
      second: 'nearest-middle',
      unit: 'mm',
      shims: [],
    })
  })

  test('the shims that are not said are those of the record', () => {
    const sum = sumOf(readLine('shims I2 0.14, E1 0.26 2.55 wanted 0.13..0.17', told(...twin)))
    expect(sum).toMatchObject({
      valves: [
        { position: 'I2', fitted: 2.4 },
        { position: 'E1', fitted: 2.55 },
      ],
      shims: [
        { position: 'I1', piece: 'p5' },
        { position: 'I2', piece: 'p6' },
        { position: 'E1', piece: 'p7' },
        { position: 'E2', piece: 'p8' },
      ],
    })
  })

  const measured = (() => {
    let { state, entries } = given()
    for (const line of twin) {
      const reading = readLine(line, state)
      if (reading.kind !== 'commands') throw new Error(line)
      ;({ state, entries } = record(reading.commands, entries))
    }
    const reading = (at: string, mm: number) => ({ at, mm, typed: String(mm) })
    const kind = 'valve-clearance' as const
    const inlets = [reading('I1', 0.14), reading('I2', 0.2)]
    const exhausts = [reading('E1', 0.26), reading('E2', 0.21)]
    const limits = { leastMm: 0.13, mostMm: 0.17, typed: '0.13..0.17' }
    return record(
      [
        { do: 'measure', name: 'inlet clearances', measurement: { kind, readings: inlets, limits } },
        { do: 'measure', name: 'exhaust clearances', measurement: { kind, readings: exhausts } },
      ],
      entries,
    ).state
  })()

  test('alone: from the clearances in the record, with the ranges said in place of those recorded', () => {
    const line = 'shims wanted E 0.22..0.28 for sale 2.40..2.60 step 0.025'
    expect(sumOf(readLine(line, measured))).toMatchObject({
      valves: [
        { position: 'I1', clearance: 0.14, fitted: 2.45, wanted: inlet },
        { position: 'I2', clearance: 0.2, fitted: 2.4, wanted: inlet },
        { position: 'E1', clearance: 0.26, fitted: 2.5, wanted: exhaust },
        // Etched 248: for sale is 2.475.
        { position: 'E2', clearance: 0.21, fitted: 2.475, wanted: exhaust },
      ],
      shims: [{ piece: 'p5' }, { piece: 'p6' }, { piece: 'p7' }, { piece: 'p8' }],
    })
  })

  test.each([
    ['shims', measured, 'no-fitted', 'E2', 'size shim E2 SIZE'],
    ['shims for sale 2.475', measured, 'no-wanted', 'E1, E2', 'shims for sale 2.475 wanted E LEAST..MOST'],
    ['shims', nothing, 'no-clearance', '', 'shims I1 CLEARANCE SHIM, I2 CLEARANCE SHIM wanted I LEAST..MOST'],
    ['shims I1 0.14 2.45', nothing, 'no-wanted', 'I1', 'shims I1 0.14 2.45 wanted I LEAST..MOST'],
    [
      'shims 1 0.1 2.45, 2 0.1 2.45, 3 0.1 2.45, 4 0.1 2.45, 5 0.1 2.45 wanted 5 0.1..0.2',
      nothing,
      'no-wanted',
      '1, 2, 3, 4',
      'shims 1 0.1 2.45, 2 0.1 2.45, 3 0.1 2.45, 4 0.1 2.45, 5 0.1 2.45 wanted 5 0.1..0.2 wanted 1 LEAST..MOST 2 LEAST..MOST 3 LEAST..MOST 4 LEAST..MOST',
    ],
    [
      'shims V1 0.14, V2 0.1, V3 0.1, V4 0.1, V5 0.1',
      nothing,
      'no-fitted',
      'V1, V2, V3, V4 and 1 more',
      'size shim V1 SIZE',
    ],
    ['shims I1 0,14,2,45', nothing, 'comma', '0,14,2,45', 'shims I1 0.14 2.45'],
    ['shims I1 0.14 0.098', nothing, 'inches', '0.098', 'shims I1 0.14 0.098 in'],
    ['shims I1 2.45 0.14', nothing, 'turned-round', 'I1 2.45 0.14', 'shims I1 0.14 2.45'],
    [
      'shims I1 0.14 2.45 wanted I 0.15',
      nothing,
      'limit-missing',
      'I 0.15',
      'shims I1 0.14 2.45 wanted I LEAST..MOST',
    ],
    ['shims I1 0.14 2.45, I1 0.15 2.4', nothing, 'twice', 'I1 0.15 2.4', 'shims I1 0.14 2.45'],
    [
      'shims I1 0.14 2.45, I2 0.1 2.4 wanted 0.1',
      nothing,
      'limit-missing',
      '0.1',
      'shims I1 0.14 2.45, I2 0.1 2.4 wanted LEAST..MOST',
    ],
    [
      'shims I1 0.14 2.45, I1 0.14 2.45 nearest',
      nothing,
      'twice',
      'I1 0.14 2.45',
      'shims I1 0.14 2.45 nearest',
    ],
    [
      'shims for sale 2.3..3 step 0.03',
      nothing,
      'step',
      '2.3..3 step 0.03',
      'shims for sale 2.3..2.99 step 0.03',
    ],
  ])('%s', (line, state, fault, part, nearest) => {
    expect(readLine(line, state)).toEqual({
      kind: 'misread',
      misreading: { code: 'shims', fault, part, nearest },
    })
  })

  test('two heads with the same positions: which shim it is cannot be known', () => {
    const state = told(...twin, 'end', 'begin other head off', 'off shims I1..I2 into bench')
    expect(readLine('shims I1 0.14 wanted 0.1..0.2', state)).toMatchObject({
      misreading: { fault: 'no-fitted' },
    })
  })

  // Where things come off, a line without a verb is what came off.
  test.each(['shims I1..I4', 'shims I1..I4, E1..E4 into new tray', 'shims 2.45 mm', 'shims I1 I2'])(
    '%s: what came off',
    (line) => expect(findVerb(line)).toBeNull(),
  )

  test.each([
    'shims',
    'shims I1 0.14 2.45',
    'shims I1: 0,14',
    'shims 1 .14 2.45',
    'shims I1 2.45 0.14',
    'shims wanted I',
    'shims bench 2.4',
  ])('%s: what is to be worked out', (line) => expect(findVerb(line)?.word).toBe('shims'))
})

describe('sizes', () => {
  const state = told(...twin, 'off 4 cover bolts into bench')

  test.each([
    ['size shim E1 2.55', [['p7', '2.55']]],
    ['size shim E1 is 0.098 in', [['p7', '0.098 in']]],
    ['size E1 shim 2.55', [['p7', '2.55']]],
    [
      'sizes shims: E1 2.55, E2: 2,475',
      [
        ['p7', '2.55'],
        ['p8', '2,475'],
      ],
    ],
    ['size p7 2.55 mm', [['p7', '2.55 mm']]],
    ['size shim E1: 2.55', [['p7', '2.55']]],
    ['size cover bolts: M6x25 hex 8', [['p9', 'M6x25 hex 8']]],
    ['size cover bolts M6x25', [['p9', 'M6x25']]],
  ])('%s', (line, sizes) => {
    expect(readLine(line, state)).toMatchObject({
      kind: 'commands',
      commands: [{ do: 'size', sizes: sizes.map(([piece, size]) => ({ piece, size })) }],
    })
  })

  test.each([
    ['size shim E1', { misreading: { code: 'missing', what: 'SIZE' } }],
    ['size', { misreading: { code: 'missing', what: 'PIECE' } }],
    ['size shims: E9 2.45', { misreading: { code: 'no-such-piece', part: 'shims E9' } }],
    ['size shims: E1', { misreading: { code: 'not-understood', part: 'E1' } }],
    ['size shims 2.45', { kind: 'which-piece' }],
  ])('%s', (line, reading) => {
    expect(readLine(line, state)).toMatchObject(reading)
  })
})

function sumOf(reading: Reading): Sum {
  if (reading.kind !== 'ask' || reading.ask.ask !== 'sum') throw new Error(JSON.stringify(reading))
  return reading.ask.sum
}
