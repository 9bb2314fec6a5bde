import { expect, test } from 'vitest'
import { jobWith } from '../support/bench.ts'

test('where nothing came off yet, what a line looks like stands there, and each is understood', () => {
  const { enter, rows, text, answer } = jobWith()
  enter('.1')
  const at = rows().findIndex((row) => row.startsWith('TYPE WHAT COMES OFF'))
  expect(at).toBeGreaterThan(0)
  const lines = rows()
    .slice(at + 1)
    .map((row) => row.trim().split(/ {2,}/)[0] ?? '')
  for (const each of lines.slice(0, lines.indexOf(''))) {
    enter(each)
    expect(answer(), each).toContain('RECORDED')
  }
  expect(text()).not.toContain('TYPE WHAT COMES OFF')
})
