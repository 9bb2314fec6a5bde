import { expect, test } from 'vitest'
import { readFriction, usualFriction } from '../../../src/trade/torque/friction.ts'

test.each([
  ['0.12', 0.12, 0.12],
  ['0,12', 0.12, 0.12],
  ['0.10..0.16', 0.1, 0.16],
  ['0.16-0.10', 0.1, 0.16],
  ['0,10 to 0,16', 0.1, 0.16],
  ['.1…1', 0.1, 1],
])('%s', (text, least, most) => {
  expect(readFriction(text)).toEqual({ understood: true, value: { least, most } })
})

test.each(['', 'dry', '0', '5', '-0.1', '0.1..', '0.1..0.2..0.3', '0.1..2', '12 %'])('%j is none', (text) => {
  expect(readFriction(text)).toEqual({
    understood: false,
    code: 'friction',
    part: text,
    nearest: '0.10..0.16',
  })
})

test('nothing said spans oiled and dry', () => {
  expect(usualFriction.assumed).toEqual({ least: usualFriction.oiled.least, most: usualFriction.dry.most })
})
