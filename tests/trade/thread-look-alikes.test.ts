import fc from 'fast-check'
import { expect, test } from 'vitest'
import { lookAlikes } from '../../src/trade/thread-look-alikes.ts'
import { thread } from './said-thread.ts'

// Common practice of shops that see both systems.
test.each([
  ['M4', '#8-32'],
  ['M5', '#10-24'],
  ['M5', '#10-32'],
  ['M6', '1/4-20'],
  ['M8', '5/16-18'],
  ['M8x1', '5/16-24'],
  ['M10', '3/8-16'],
  ['M11', '7/16-14'],
  ['M12', '1/2-13'],
  ['M14', '9/16-12'],
  ['M16', '5/8-11'],
  ['M20', '3/4-10'],
  ['M22', '7/8-9'],
])('%s and %s go into each other', (one, other) => {
  expect(lookAlikes(thread(one), thread(other))).toBe(true)
})

test.each([
  ['M8', '3/8-16'],
  ['M6', '5/16-18'],
  ['M10', '7/16-14'],
  ['M12', '7/16-14'],
  ['M8', '1/4-20'],
  // One system: another size is another size, and another pitch is not this question.
  ['M8', 'M8x1'],
  ['5/16-18', '5/16-24'],
  // A taper pipe thread of 1/4 is 13.7 mm across.
  ['M14', '1/4 NPT'],
])('%s and %s do not', (one, other) => {
  expect(lookAlikes(thread(one), thread(other))).toBe(false)
})

test('it does not matter which is named first', () => {
  const any = fc
    .constantFrom('M4', 'M5', 'M6', 'M8', 'M10', '#10-32', '1/4-20', '5/16-18', '3/8-16', '1/8 NPT')
    .map(thread)
  fc.assert(fc.property(any, any, (one, other) => lookAlikes(one, other) === lookAlikes(other, one)))
})
