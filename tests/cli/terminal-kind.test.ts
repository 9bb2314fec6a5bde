import { expect, test } from 'vitest'
import { canBeDrawnOn, wantsColour } from '../../src/cli/terminal-kind.ts'

test.each([
  ['xterm-256color', true],
  ['linux', true],
  ['screen', true],
  ['a-terminal-nobody-knows', true],
  ['dumb', false],
  ['unknown', false],
  ['', false],
  [undefined, false],
])('a terminal called %s can be drawn on: %s', (TERM, can) => {
  expect(canBeDrawnOn({ TERM }, 'linux')).toBe(can)
})

test('on Windows a terminal has no name', () => {
  expect(canBeDrawnOn({}, 'win32')).toBe(true)
  expect(canBeDrawnOn({ TERM: 'dumb' }, 'win32')).toBe(false)
})

test.each([
  [{}, true],
  [{ NO_COLOR: '' }, true],
  [{ NO_COLOR: '1' }, false],
  [{ FORCE_COLOR: '0' }, false],
  [{ FORCE_COLOR: '3' }, true],
  [{ NO_COLOR: '1', FORCE_COLOR: '3' }, false],
  [{ TERM: 'dumb' }, false],
])('colours with %j: %s', (env, wanted) => {
  expect(wantsColour(env)).toBe(wanted)
})
