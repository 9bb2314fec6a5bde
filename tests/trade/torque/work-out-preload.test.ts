import { expect, test } from 'vitest'
import { workOutPreload } from '../../../src/trade/torque/work-out-preload.ts'
import { fastenerClass, thread } from '../said-thread.ts'

const asked = { newtonMetres: 25, typed: '25 Nm', friction: { least: 0.1, most: 0.16 } }

test('against the class that was said', () => {
  const worked = workOutPreload({ ...asked, thread: thread('M8'), fastenerClass: fastenerClass('10.9') })
  if (!worked.isKnown) throw new Error(worked.code)
  expect(worked.shares.map((each) => each.fastenerClass.name)).toEqual(['10.9'])
  expect(worked.question).toBeNull()
})

test.each([
  ['M8', ['8.8', '10.9', '12.9']],
  ['3/8-16', ['5', '8']],
  // ISO 898-1 ends at M39.
  ['M42', []],
])('against the common ones of %s where none was said: %j', (size, names) => {
  const worked = workOutPreload({ ...asked, thread: thread(size) })
  if (!worked.isKnown) throw new Error(worked.code)
  expect(worked.shares.map((each) => each.fastenerClass.name)).toEqual(names)
})

test('a torque worth a question brings its question', () => {
  const worked = workOutPreload({ ...asked, thread: thread('M6'), newtonMetres: 120, typed: '120 Nm' })
  expect(worked).toMatchObject({ isKnown: true, question: { code: 'torque-over' } })
})

test.each([
  ['1/4 NPT', 'taper-pipe'],
  ['M15', 'pitch-unknown'],
])('%s: %s', (size, code) => {
  expect(workOutPreload({ ...asked, thread: thread(size) })).toEqual({ isKnown: false, code })
})
