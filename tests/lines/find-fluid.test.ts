import { expect, test } from 'vitest'
import { findFluid } from '../../src/lines/find-fluid.ts'
import { told } from './told.ts'

const drainedTwice = ['begin pump off', 'off oil out 2.8 L', 'off oil out 2.8 L', 'end', 'take 1']

test.each([
  ['filled', 'fill f1 2.8 L'],
  ['passed over, because it was said twice', 'override f1 because it was said twice'],
])('of two fluids of one name, one of them %s, the other is meant', (_, line) => {
  expect(() => findFluid('oil', told(...drainedTwice))).toThrow()
  expect(findFluid('oil', told(...drainedTwice, line))).toBe('f2')
  expect(findFluid('f1', told(...drainedTwice, line))).toBe('f1')
})
