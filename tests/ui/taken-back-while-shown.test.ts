import { expect, test } from 'vitest'
import { jobWith } from './support/bench.ts'

test('a drawing whose piece is taken back says so', () => {
  const { enter, type, text, desk } = jobWith('begin cover off', 'off 8 M6x25 cover bolts into new bag')
  enter('draw cover bolts')
  expect(desk.screen.at).toBe('draw')
  enter('0')
  expect(text()).toMatch(/taken\s+back/)
  enter('redo')
  expect(text()).toContain('8')
  type('\x7f')
  expect(desk.screen.at).not.toBe('draw')
})
