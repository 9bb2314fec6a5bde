import { expect, test } from 'vitest'
import { wholeSecond } from '../../src/plan/whole-second.ts'

test('a moment to the second, never later than it was', () => {
  expect(wholeSecond(new Date('2030-01-15T14:05:59.999Z'))).toBe('2030-01-15T14:05:59.000Z')
  expect(wholeSecond(new Date('2030-01-15T14:05:59.000Z'))).toBe('2030-01-15T14:05:59.000Z')
  expect(wholeSecond(new Date('1969-12-31T23:59:58.500Z'))).toBe('1969-12-31T23:59:58.000Z')
})
