import { expect, test } from 'vitest'
import { cameOffBefore } from '../../src/session/came-off-before.ts'
import { jobWith } from '../ui/support/bench.ts'

function beforeIn(...lines: string[]) {
  return cameOffBefore(jobWith(...lines).state())
}

test('the newest first, fasteners before what they held, each words once', () => {
  const lines = [
    'begin cover off',
    'off 8 M6x25 cover bolts',
    'off cover',
    'off 2 clips',
    'off 4 M6x25 cover bolts',
  ]
  expect(beforeIn(...lines)).toEqual(['M6x25 cover bolts', 'clips', 'cover'])
})

test('so many as are seen at a glance', () => {
  const screws = ['2 M4x8 plate screws', '3 M5x8 lid screws', '4 M6x8 guard screws', '5 M8x8 arm screws']
  const lines = [...screws, '6 M3x8 cap screws'].map((each) => `off ${each}`)
  expect(beforeIn('begin cover off', ...lines)).toHaveLength(4)
})

test('neither what has a position of its own nor what came new', () => {
  const lines = [
    'begin pump off, does not hide',
    'off water pump',
    'off cam caps I1..I4',
    'end',
    'new water pump',
  ]
  expect(beforeIn(...lines)).toEqual(['water pump'])
})
