import { describe, expect, test } from 'vitest'
import { readAmount } from '../../../src/trade/convert/read-amount.ts'

const metric = { units: 'metric' } as const

describe('an amount of any kind', () => {
  test.each([
    ['22 lbf·ft', 'torque', 22, 'lbf·ft', 29.828, 1],
    ['22 ft-lbs', 'torque', 22, 'lbf·ft', 29.828, 1],
    ['120 in lb', 'torque', 120, 'lbf·in', 13.558, 1],
    ['22,5 Nm', 'torque', 22.5, 'N·m', 22.5, 0.1],
    ['2.2 mkg', 'torque', 2.2, 'kgf·m', 21.575, 0.1],
    ['150 Ncm', 'torque', 150, 'ncm', 1.5, 1],
    ['0.002 in', 'length', 0.002, 'in', 0.0508, 0.001],
    ['2 thou', 'length', 2, 'thou', 0.0508, 1],
    ['0.004 in.', 'length', 0.004, 'in', 0.1016, 0.001],
    ['11/32"', 'length', 0.34375, 'in', 8.731, 0],
    ['0 mm', 'length', 0, 'mm', 0, 1],
    ['0 in', 'length', 0, 'in', 0, 1],
    ['2 US qt', 'volume', 2, 'US qt', 1.8927, 1],
    ['500 ml', 'volume', 500, 'mL', 0.5, 1],
    ['2.2 bar', 'pressure', 2.2, 'bar', 220, 0.1],
    ['32 psi', 'pressure', 32, 'psi', 220.63, 1],
    ['0 bar', 'pressure', 0, 'bar', 0, 1],
    ['88 °C', 'temperature', 88, '°C', 88, 1],
    ['195 F', 'temperature', 195, '°F', 90.556, 1],
    ['-40 deg F', 'temperature', -40, '°F', -40, 1],
  ])('%s', (text, kind, number, unit, base, step) => {
    const reading = readAmount(text, metric)
    expect(reading).toMatchObject({ understood: true, value: { kind, number, unit: { name: unit }, step } })
    if (reading.understood) expect(reading.value.base).toBeCloseTo(base, 2)
  })

  test('a bare quart is the US one for who works in US units', () => {
    expect(readAmount('2 qt', { units: 'us' })).toMatchObject({
      understood: true,
      value: { unit: { name: 'US qt' } },
    })
  })
})

describe('not understood', () => {
  test.each([
    ['', 'empty'],
    ['Nm', 'number'],
    ['22', 'unit'],
    ['22 furlongs', 'unit'],
    ['22 constructor', 'unit'],
    ['0 Nm', 'not-positive'],
    ['-22 Nm', 'not-positive'],
    ['9000 Nm', 'too-large'],
    ['10,000 Nm', 'thousands'],
    ['2 qt', 'us-or-imperial'],
    ['-1 mm', 'not-positive'],
    ['-1 bar', 'not-positive'],
    ['900000 bar', 'too-large'],
    ['-300 °C', 'number'],
    ['99999 °C', 'too-large'],
    ['1e3 Nm', 'unit'],
  ])('%j: %s', (text, code) => {
    const reading = readAmount(text, metric)
    expect(reading).toMatchObject({ understood: false, code })
    if (!reading.understood) expect(readAmount(reading.nearest, metric).understood).toBe(true)
  })
})
