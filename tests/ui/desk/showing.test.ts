import { expect, test } from 'vitest'
import { jobWith, say } from '../support/bench.ts'

test('is worked out once for a frame, and anew with whatever happens', () => {
  const { desk, type, enter } = jobWith('begin valve cover off')
  const seen = new Set<unknown>([desk.foot()])
  const isNew = () => {
    const before = seen.size
    return seen.add(desk.foot()).size > before
  }
  expect(isNew()).toBe(false)
  expect(desk.above()).toBe(desk.above())
  expect(desk.meaning()).toBe(desk.meaning())
  type('2 nuts')
  expect(isNew()).toBe(true)
  enter('')
  expect(isNew()).toBe(true)
  desk.resize({ width: 100, height: 30 })
  expect(isNew()).toBe(true)
  // Written as by another program: nobody pressed anything.
  if (desk.session) say(desk.session, 'off valve cover into bench')
  expect(isNew()).toBe(true)
})
