import { expect, test } from 'vitest'
import { readAskedMeasure } from '../../../../src/trade/measuring/reading/read-asked-measure.ts'

// All figures are invented. How limits are written: common practice.

test.each([
  ['run-out at most 0.05', 'run-out', { mostMm: 0.05 }],
  ['oil clearance 0.03..0.08 mm', 'oil clearance', { leastMm: 0.03, mostMm: 0.08 }],
  ['oil clearance between 0.03 and 0.08', 'oil clearance', { leastMm: 0.03, mostMm: 0.08 }],
  ['length min 76.5', 'length', { leastMm: 76.5 }],
  ['out of round max 0.02', 'out of round', { mostMm: 0.02 }],
  ['end play max 0.010 in', 'end play', { mostMm: 0.254 }],
])('%s: what is measured, apart from its limit', (text, quantity, limits) => {
  expect(readAskedMeasure(text)).toMatchObject({ quantity, limits })
})

test.each([
  'flatness',
  'taper of the journals',
  'out of round',
  'bore of cylinders 2 to 4',
  'end play at most a hair',
])('%s: no limit', (text) => {
  expect(readAskedMeasure(text)).toEqual({ quantity: text, isBare: false })
})

test('a limit with a unit is none that may be either', () => {
  expect(readAskedMeasure('run-out at most 0.05').isBare).toBe(true)
  expect(readAskedMeasure('run-out at most 0.05 mm').isBare).toBe(false)
})
