import { expect, test } from 'vitest'
import { emptyHome, screens, shelfIn } from './support/bench.ts'
import { followLessons } from './support/learner.ts'

test('whoever does what the lessons say comes to the end', () => {
  const bench = screens(shelfIn(emptyHome()))
  bench.enter('3')
  followLessons(bench, 40)
  expect(bench.state().cleared).toBe(true)
})
