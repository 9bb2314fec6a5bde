import { describe, expect, test } from 'vitest'
import { judge } from '../../../../src/trade/measuring/judge.ts'
import type { MeasurementKind } from '../../../../src/trade/measuring/measurement.ts'
import {
  type MeasurementFrame,
  readMeasurement,
} from '../../../../src/trade/measuring/reading/read-measurement.ts'

const valves = ['I1', 'I2', 'I3', 'I4']
const read = (kind: MeasurementKind, text: string, more: Partial<MeasurementFrame> = {}) =>
  readMeasurement(text, { kind, positions: [], ...more })

describe('a line of a measurement', () => {
  test('readings, instrument, limits, and where these stand', () => {
    expect(read('flatness', '0.02 0.03 0,5 by 0.01 feeler, max 0.05 manual p. 4-12')).toMatchObject({
      code: 'comma',
    })
    expect(read('flatness', '0.02 0.03 by 0.01 feeler, max 0.05 manual p. 4-12')).toEqual({
      understood: true,
      value: {
        kind: 'flatness',
        readings: [
          { mm: 0.02, typed: '0.02' },
          { mm: 0.03, typed: '0.03' },
        ],
        instrument: { resolutionMm: 0.01, typed: 'by 0.01 feeler', kind: 'feeler' },
        limits: { typed: 'max 0.05', mostMm: 0.05, source: 'manual p. 4-12' },
      },
    })
  })

  test.each([
    '0.02 0.03, max 0.05 by 0.01 feeler (see manual 4-12)',
    '0.02 0.03 max 0.05, feeler 0.01, from the service manual',
    '0.02 0.03, 0.01 dial, limit 0.05, page 12',
    'by 0.01: 0.02 0.03; max 0.05 p. 3',
    '0.02 0.03, max 0.05 manual by 0.01 dial',
    '0.02 0.03, max 0.05 manual p. 28 feeler 0.01',
    '0,02 0,03 dial 0,01; max 0,05 page 12',
    '0,02 0,03, 0,01 dial, max 0,05 page 12',
    '0.02 0.03;0.01 dial;max 0.05 page 12',
  ])('in any order: %s', (text) => {
    const measurement = read('flatness', text)
    expect(measurement).toMatchObject({
      understood: true,
      value: {
        readings: [{ mm: 0.02 }, { mm: 0.03 }],
        instrument: { resolutionMm: 0.01 },
        limits: { mostMm: 0.05 },
      },
    })
    expect(measurement.understood && measurement.value.limits?.source).toMatch(/manual|page 12|p\. 3/)
  })

  test('what was read with does not stay among the words of the source', () => {
    const source = (text: string) => {
      const read = readMeasurement(text, { kind: 'taper', positions: [] })
      return read.understood ? read.value.limits?.source : read
    }
    const readings = 'top x 80.01, bottom x 80.03, max 0.02'
    expect(source(`${readings} manual by 0.01 dial`)).toBe('manual')
    expect(source(`${readings} manual by 0.01 dial, p. 28`)).toBe('manual, p. 28')
    // A gauge that is named without a figure is a chapter.
    expect(source(`${readings} manual, dial gauges`)).toBe('manual, dial gauges')
  })

  test('positions given for all are dealt out in their order', () => {
    const measurement = read('valve-clearance', '0.14 0.15 0.15 0.14 limits 0.13..0.17', {
      positions: valves,
    })
    expect(measurement.understood && measurement.value.readings.map(({ at, mm }) => [at, mm])).toEqual([
      ['I1', 0.14],
      ['I2', 0.15],
      ['I3', 0.15],
      ['I4', 0.14],
    ])
  })

  test('bores and journals find each other by place', () => {
    for (const [text, positions] of [
      ['I1 bore 28.03 journal 27.98 I2 bore 28.02 journal 27.98, max 0.07', []],
      ['bore 28.03 28.02 journal 27.98 27.98, max 0.07', ['I1', 'I2']],
    ] as const) {
      const measurement = read('clearance', text, { positions })
      expect(
        measurement.understood && judge(measurement.value).results.map(({ at, mm }) => [at, mm]),
      ).toEqual([
        ['I1', 0.05],
        ['I2', 0.04],
      ])
    }
  })

  test('heights and axes of a bore', () => {
    const measurement = read('out-of-round', 'top x 76.01 y 76.03 bottom x 76.00 y 76.01')
    expect(measurement.understood && judge(measurement.value).results).toEqual([
      expect.objectContaining({ what: 'out-of-round', height: 'top', mm: 0.02 }),
    ])
  })

  test('a grid, its steps, and heights on both sides of nothing', () => {
    const grid = { rows: 2, columns: 3, columnStepMm: 50 }
    expect(read('flatness-grid', '0 0.01 -0.02 0.03 0 .01 by 0.01 dial', { grid })).toMatchObject({
      understood: true,
      value: { columns: 3, columnStepMm: 50, readings: { length: 6 } },
    })
  })

  test('readings in inches typed as millimetres are asked about, where that is seen', () => {
    const measurement = read('valve-clearance', 'I1 0.006 I2 0.006 limits 0.13..0.17')
    expect(measurement.understood && judge(measurement.value)).toMatchObject({
      verdict: 'out',
      lacking: [{ what: 'resolution' }, { what: 'inches' }],
    })
  })

  test.each([
    ['valve-clearance', '0.14 0.15 limits 0.13..0.17', valves, 'count', 'I1 0.14, I2 0.15'],
    ['valve-clearance', 'I1 0.14 I9 0.15', valves, 'count', 'I1 0.14, I9 0.15'],
    ['valve-clearance', 'I1 0.14 I1 0.15', [], 'twice', 'I1 0.14'],
    ['valve-clearance', '-0.14', [], 'number', '0.14'],
    ['valve-clearance', '0.14 limit 0.15', [], 'bare-limit', 'max 0.15'],
    ['flatness', '2 3 2 thou max 0.05', [], 'unit', 'max 0.05 thou'],
    ['flatness', '2 3 2 thou by 0.5', [], 'unit', 'by 0.5 thou'],
    ['flatness', '0.02 max 0.002 in', [], 'unit', '0.02 in'],
    ['flatness', '0.02 with feelers', [], 'resolution', 'feeler by 0.01'],
    ['flatness', 'max 0.05', [], 'empty', '0.02 0.03 0.05'],
    ['flatness', '0.02 manual p. 4', [], 'limits', '0.02 manual p. 4 max 0.05'],
  ] as const)('%s of %s', (kind, text, positions, code, nearest) => {
    expect(read(kind, text, { positions })).toMatchObject({ understood: false, code, nearest })
  })

  test('who works in inches says the unit', () => {
    const units = 'us' as const
    expect(read('flatness', '0.002 max 0.005', { units })).toMatchObject({
      code: 'unit',
      nearest: '0.002 in',
    })
    expect(read('flatness', '0.002 in max 0.005 in', { units }).understood).toBe(true)
    expect(read('flatness', '0.05 mm max 0.12 mm', { units }).understood).toBe(true)
  })

  test('a grid that is not filled', () => {
    const grid = { rows: 3, columns: 4 }
    expect(read('flatness-grid', '0 0 0 0 0 0 0 0', { grid })).toMatchObject({
      code: 'count',
      nearest: '2x4',
    })
  })
})
