import { expect, test, vi } from 'vitest'
import { jobWith, say } from '../support/bench.ts'

const strip = ['begin valve cover off', 'off 8 M6x25 hex 10 valve cover bolts into new bag']

test.each(['.', '.1', '.3', '.4', '.6', 'step 1'])('%s is not worked out anew for each key', (screen) => {
  const { enter, type, desk } = jobWith(...strip, 'end')
  enter(screen)
  const page = desk.page()
  type('4 nuts')
  expect(desk.page()).toBe(page)
})

test.each(['.2', '.5', '?'])('%s follows what is typed', (screen) => {
  const { enter, type, desk } = jobWith(...strip, 'end')
  enter(screen)
  const page = desk.page()
  type('bolt')
  expect(desk.page()).not.toBe(page)
})

test('is worked out anew with whatever it shows', () => {
  const { enter, desk } = jobWith(...strip)
  enter('.1')
  const seen = new Set([desk.page()])
  const isNew = () => {
    const before = seen.size
    return seen.add(desk.page()).size > before
  }
  desk.resize({ width: 100, height: 30 })
  expect(isNew()).toBe(true)
  if (desk.session) say(desk.session, 'off valve cover into bench')
  expect(isNew()).toBe(true)
  enter('.2', '1', '4')
  expect(isNew()).toBe(true)
  enter('.4')
  expect(isNew()).toBe(true)
  enter('.1')
  expect(isNew()).toBe(true)
})

test('the other jobs are not read from the disk for a key', () => {
  const { enter, type, desk, shelf, line } = jobWith(...strip)
  const list = vi.spyOn(shelf, 'list')
  for (const screen of ['.', '.1', '.2', '.3', '.4', '.5', '.6', 'step 1', 'scan 1', '?']) {
    enter(screen)
    type('4 nuts')
    desk.meaning()
    expect(list, `${screen}, ${line()}`).not.toHaveBeenCalled()
    type('\x15')
  }
})
