import { expect, test } from 'vitest'
import { keyReader } from '../../src/ui/controls/line/key-reader.ts'
import { textOf } from '../../src/ui/text/line.ts'
import { jobWith } from './support/bench.ts'
import { EVERY_SCREEN } from './support/every-screen.ts'

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

test('nor on a screen in any of its states; and 0 says there which entry it takes back', async () => {
  for (const { name, open } of EVERY_SCREEN) {
    const desk = await open()
    const reader = keyReader()
    const entries = () => desk.session?.entries().length
    const before = entries()
    desk.press({ key: 'clear' })
    if (desk.session && (entries() ?? 0) > 1 && desk.page().question?.take('0') == null) {
      desk.press({ text: '0' })
      const meaning = desk.meaning()
      const said = meaning.kind === 'act' ? meaning.says.map(textOf).join(' ') : meaning.kind
      expect(said, name).toMatch(/^take back entry \d+: \S/)
    }
    for (const key of keys) {
      desk.press({ key: 'clear' })
      for (const pressed of [...reader.push(key), ...reader.flush()]) desk.press(pressed)
      expect(entries(), `${JSON.stringify(key)} on ${name}`).toBe(before)
      expect(desk.ended).toBeNull()
    }
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
