import { expect, test } from 'vitest'
import { jobWith } from './support/bench.ts'

const job = [
  'begin cover off, does not hide',
  'off 4 M6x20 hex 8 cover bolts into new bag',
  'off 2 dowels into bag 1',
  'end',
  'begin pump off, does not hide',
  'off 2 M8x30 hex 10 pump bolts into new bag',
]

const screens = [
  '.',
  '.1',
  '.2',
  '.3',
  '.4',
  '.5',
  'step 1',
  'scan 1',
  'qr 1',
  'photos',
  'told',
  'proposals',
  '?',
  'jobs',
  'quit',
]
const keys = [
  ...'abcdefghijklmnopqrstuvwxyzABCXYZ0123456789.,+-*/?!:;=()[]<>"',
  ' ',
  '\t',
  '\x7f',
  '\x1b',
  '\x1b[A',
  '\x1b[B',
  '\x1b[5~',
  '\x1b[6~',
  '\x1b[3~',
  '\x1bOP',
]

test('no single key but Enter records anything, on any screen', () => {
  const { enter, type, entries, desk } = jobWith(...job)
  const before = entries()
  for (const screen of screens) {
    for (const key of keys) {
      type('\x15')
      enter('.', screen)
      type(key)
      expect(entries(), `${JSON.stringify(key)} on ${screen}`).toBe(before)
      expect(desk.ended).toBeNull()
    }
  }
  type('\x15')
  enter('.', 'scan 1', '2')
  for (const key of keys) {
    type('\x15')
    type(key)
    expect(entries(), `${JSON.stringify(key)} in a count`).toBe(before)
  }
})

test('the whole way back needs no key beyond those of a number pad', () => {
  const { enter, type, state, desk } = jobWith(...job, 'end')
  const pressed: string[] = []
  const press = (keys: string) => {
    pressed.push(...keys)
    type(keys)
  }
  enter('.')
  for (let presses = 0; presses < 60 && !state().started; presses += 1) {
    const isLast =
      desk.screen.at === 'left' && !desk.page().title.some(({ text }) => text.includes('NOT CLEAR'))
    press(isLast ? (state().cleared ? '2\r' : '1\r') : '\r')
  }
  expect(state().started).toBe(true)
  expect(new Set(pressed)).toEqual(new Set(['\r', '1', '2']))
})
