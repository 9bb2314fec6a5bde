import { expect, test } from 'vitest'
import { Scrolling } from '../../../src/ui/desk/scrolling.ts'
import { Way } from '../../../src/ui/desk/way.ts'
import { NO_CHOICES, type Page } from '../../../src/ui/page.ts'

function pageOf(length: number, more: Partial<Page> = {}): Page {
  const rows = { length, at: () => [] }
  return { title: [], top: [], rows, enter: null, choice: NO_CHOICES, large: null, ...more }
}

test('each place on the way stands where it stood', () => {
  const way = new Way({ at: 'log' })
  const scrolling = new Scrolling(way)
  const page = pageOf(100)
  expect(scrolling.row(page, '')).toBeNull()
  scrolling.move({ pages: 1 }, page, { typed: '', height: 10 })
  expect(scrolling.row(page, '')).toBe(9)
  way.go({ at: 'now' })
  expect(scrolling.row(page, '')).toBeNull()
  way.back()
  expect(scrolling.row(page, '')).toBe(9)
})

test('begins where the page does, and stays within its rows', () => {
  const scrolling = new Scrolling(new Way({ at: 'log' }))
  const page = pageOf(30, { start: 12 })
  scrolling.move({ rows: 1 }, page, { typed: '', height: 10 })
  expect(scrolling.row(page, '')).toBe(13)
  scrolling.move({ pages: 9 }, page, { typed: '', height: 10 })
  expect(scrolling.row(page, '')).toBe(20)
})

test('rows that are narrowed begin at the top for other words, and leave the whole list where it stood', () => {
  const scrolling = new Scrolling(new Way({ at: 'lies', words: '' }))
  const all = pageOf(100)
  const narrowed = pageOf(40, { isNarrowed: true })
  scrolling.move({ pages: 2 }, all, { typed: '', height: 10 })
  expect(scrolling.row(narrowed, 'bolt')).toBe(0)
  scrolling.move({ pages: 1 }, narrowed, { typed: 'bolt', height: 10 })
  expect(scrolling.row(narrowed, 'bolt')).toBe(9)
  expect(scrolling.row(narrowed, 'bolts')).toBe(0)
  expect(scrolling.row(all, '')).toBe(18)
})
