import { describe, expect, test } from 'vitest'
import { jobWith } from '../support/bench.ts'

const strip = [
  'begin engine off, does not hide',
  'off 2 cam caps I1 I2 into new bag',
  'off oil pump into new bag',
  'end',
]
const signOf = (rows: string[]) => / {3}([✓!Xo?+>] [A-Z ]+?) (?: |$)/.exec(rows[0] ?? '')?.[1]

describe('a scanned bag of what is not accepted', () => {
  test.each([
    ['nobody asked', [], '✓ FITS NOW'],
    ['not looked at yet', ['check cam caps: look for score'], '! NOT CHECKED'],
    ['looked at', ['check cam caps: look for score', 'ok cam caps'], '✓ FITS NOW'],
    ['condemned', ['judge cam cap I2 replace because worn'], 'X NOT GOOD'],
    [
      'condemned, and the other not looked at',
      ['check cam cap I1: look', 'judge cam cap I2 machine because tight'],
      'X NOT GOOD',
    ],
    [
      'a new one beside the old',
      ['check oil pump: look', 'new oil pump instead into bag 1'],
      '! NOT COMPARED',
    ],
  ])('%s', (_says, lines, sign) => {
    const { enter, rows } = jobWith(...strip, ...lines)
    enter('scan 1')
    expect(signOf(rows())).toBe(sign)
    // In large letters under the title, where they fit.
    expect(rows()[1]).toMatch(/^ {5}[ █]+$/)
  })

  test('with every reason, and what to type', () => {
    const { enter, text } = jobWith(...strip, 'check cam cap I1: look for score')
    enter('scan 1')
    expect(text()).toContain('and not accepted')
    expect(text()).toContain('ok k1')
  })
})

describe('what else the way back asks for', () => {
  test('checks are numbered on after the steps, and taken by their number', () => {
    const { enter, text, state } = jobWith(...strip)
    enter('proposals')
    expect(text()).toContain('USUALLY CHECKED BEFORE IT GOES BACK')
    const number = / (\d+) +cam caps, 2 pieces/.exec(text())?.[1] ?? ''
    enter(number)
    expect(new Set([...state().checks.values()].map(({ piece }) => piece))).toEqual(new Set(['p1', 'p2']))
    expect(text()).not.toContain('cam caps, 2 pieces')
  })
})
