import { expect, test } from 'vitest'
import { whyNoShim } from '../../../src/trade/shims/no-shim.ts'

const valve = (fitted: number, clearance: number) => ({
  position: 'I1',
  fitted,
  clearance,
  wanted: { least: 0.18, most: 0.22 },
})

test.each([
  // 3.30 + 0.30 - 0.20 = 3.40, and the thickest for sale is 3.30: refused.
  [valve(3.3, 0.3), [2.5, 3.3], { code: 'above', nearest: { size: 3.3, clearance: 0.3 } }],
  [valve(2.5, 0.1), [2.5, 3.3], { code: 'below', nearest: { size: 2.5, clearance: 0.1 } }],
  [valve(2.5, 0.33), [2.5, 2.6, 2.7], { code: 'between', nearest: { size: 2.6, clearance: 0.23 } }],
  [valve(2.5, 0.3), [2.5, 2.6], { code: 'needed-elsewhere', nearest: { size: 2.6, clearance: 0.2 } }],
  [valve(2.5, 0.3), [], { code: 'nothing-to-be-had', nearest: null }],
  [valve(2.5, 0), [2.3], { code: 'no-clearance', nearest: null }],
])('%j among %j: %j', (measured, sizes, why) => {
  expect(whyNoShim(measured, sizes)).toEqual(why)
})
