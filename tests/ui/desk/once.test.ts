import { expect, test } from 'vitest'
import { Once } from '../../../src/ui/desk/once.ts'

test('works a value out once until something happens, each by its name', () => {
  const once = new Once()
  let count = 0
  const next = () => {
    count += 1
    return count
  }
  expect([once.of('a', 'page', next), once.of('a', 'page', next), once.of('a', 'foot', next)]).toEqual([
    1, 1, 2,
  ])
  expect([once.of('b', 'foot', next), once.of('b', 'page', next), once.of('b', 'foot', next)]).toEqual([
    3, 4, 3,
  ])
  once.forget()
  expect(once.of('b', 'page', next)).toBe(5)
})

test('a value may be nothing', () => {
  const once = new Once()
  expect(once.of('a', 'page', () => undefined)).toBeUndefined()
  expect(once.of('a', 'page', () => 1)).toBeUndefined()
})
