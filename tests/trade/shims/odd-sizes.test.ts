import { expect, test } from 'vitest'
import { oddSizes } from '../../../src/trade/shims/odd-sizes.ts'
import { steps } from './engines.ts'

const valves = [2.45, 2.46, 2.25].map((fitted, at) => ({
  position: `I${at + 1}`,
  clearance: 0.15,
  fitted,
  wanted: { least: 0.13, most: 0.17 },
}))

test('a size that is not for sale is asked about, with the sizes next to it', () => {
  expect(oddSizes(valves, [2.5, 3.1], steps(2.3, 3, 0.025))).toEqual([
    { at: 'I2', size: 2.46, next: [2.45, 2.475] },
    { at: 'I3', size: 2.25, next: [2.3] },
    { at: null, size: 3.1, next: [3] },
  ])
})

test('without a list nothing is odd', () => {
  expect(oddSizes(valves, [2.43], [])).toEqual([])
})
