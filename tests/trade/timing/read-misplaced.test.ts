import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Measured } from '../../../src/trade/timing/misplaced-mark.ts'
import { readMisplaced } from '../../../src/trade/timing/read-misplaced.ts'

describe('how a mark is off', () => {
  test.each<[string, Measured]>([
    ['1 late', { by: 'teeth', teeth: 1, side: 'late', at: 'cam' }],
    ['one tooth retarded', { by: 'teeth', teeth: 1, side: 'late', at: 'cam' }],
    ['2 teeth early at the crank', { by: 'teeth', teeth: 2, side: 'early', at: 'crank' }],
    ['off by 2 teeth advanced', { by: 'teeth', teeth: 2, side: 'early', at: 'cam' }],
    ['15 deg crank late', { by: 'degrees', degrees: 15, side: 'late', at: 'crank' }],
    ['15° crank, late', { by: 'degrees', degrees: 15, side: 'late', at: 'crank' }],
    ['late by 7,5 degrees at the cam', { by: 'degrees', degrees: 7.5, side: 'late', at: 'cam' }],
    ['late by 15 crank degrees', { by: 'degrees', degrees: 15, side: 'late', at: 'crank' }],
    ['10 cam degrees retarded', { by: 'degrees', degrees: 10, side: 'late', at: 'cam' }],
    ['15 degrees of crankshaft ahead', { by: 'degrees', degrees: 15, side: 'early', at: 'crank' }],
    ['16 pins for 15 tight', { by: 'count', wanted: 15, found: 16, run: 'tight', at: 'cam' }],
    ['16 for 15 on the slack side', { by: 'count', wanted: 15, found: 16, run: 'slack', at: 'cam' }],
    [
      '16 links instead of 15, tensioner side',
      { by: 'count', wanted: 15, found: 16, run: 'slack', at: 'cam' },
    ],
    ['found 14, should be 15 tight', { by: 'count', wanted: 15, found: 14, run: 'tight', at: 'cam' }],
    ['16 for 15 tight at the crank', { by: 'count', wanted: 15, found: 16, run: 'tight', at: 'crank' }],
  ])('%s', (typed, measured) => {
    expect(readMisplaced(typed)).toEqual({ understood: true, value: { measured } })
  })

  // As seen, the cam above the crank: the run that goes down is the tight one.
  test.each<[string, Measured, string]>([
    [
      '7.5 deg cam clockwise, runs clockwise',
      { by: 'degrees', degrees: 7.5, side: 'early', at: 'cam' },
      'clockwise',
    ],
    ['7.5 deg cam ccw, turns cw', { by: 'degrees', degrees: 7.5, side: 'late', at: 'cam' }, 'clockwise'],
    [
      '15 deg crank clockwise, rotation clockwise',
      { by: 'degrees', degrees: 15, side: 'late', at: 'crank' },
      'clockwise',
    ],
    [
      '16 for 15 on the right, runs clockwise',
      { by: 'count', wanted: 15, found: 16, run: 'tight', at: 'cam' },
      'clockwise',
    ],
    [
      '16 for 15 right, runs counter-clockwise',
      { by: 'count', wanted: 15, found: 16, run: 'slack', at: 'cam' },
      'anticlockwise',
    ],
    ['1 late, runs anticlockwise', { by: 'teeth', teeth: 1, side: 'late', at: 'cam' }, 'anticlockwise'],
  ])('%s', (typed, measured, runs) => {
    expect(readMisplaced(typed)).toEqual({ understood: true, value: { measured, runs } })
  })

  test.each([
    ['', 'empty', '', '1 late'],
    ['late', 'amount', 'late', '1 late'],
    ['early', 'amount', 'early', '1 early'],
    ['1', 'early-or-late', '1', '1 late'],
    ['15 deg late', 'crank-or-cam', '15 deg late', '15 deg crank late'],
    ['15 deg crank', 'early-or-late', '15 deg crank', '15 deg crank late'],
    ['1.2.3 deg crank late', 'amount', '1.2.3 deg crank late', '15 deg crank late'],
    [
      '7.5 deg cam clockwise',
      'which-way-it-runs',
      '7.5 deg cam clockwise',
      '7.5 deg cam clockwise, runs clockwise',
    ],
    ['16 for 15', 'tight-or-slack', '16 for 15', '16 for 15 tight'],
    ['16 for 15 right', 'which-way-it-runs', '16 for 15 right', '16 for 15 right, runs clockwise'],
    ['1 purple late', 'words', 'purple', '1 late'],
    ['16 for 15 tight late', 'words', 'late', '16 for 15 tight'],
    ['1 late slack', 'words', 'slack', '1 late'],
    ['15 deg crank late clockwise, runs clockwise', 'words', 'clockwise', '15 deg crank late'],
    ['1 2 late', 'words', '2', '1 late'],
    ['15 late degrees crank', 'words', 'degrees', '1 late'],
  ])('%j is not understood: %s', (typed, code, part, nearest) => {
    expect(readMisplaced(typed)).toEqual({ understood: false, code, part, nearest })
    expect(readMisplaced(nearest).understood).toBe(true)
  })
})

test('whatever is typed, the nearest form is understood, and a number of degrees is never one of teeth', () => {
  const word = fc.constantFrom(
    ...[
      '1',
      '15',
      '7.5',
      'deg',
      '°',
      'crank',
      'cam',
      'late',
      'early',
      'for',
      'pins',
      'teeth',
      'tight',
      'left',
      'off',
    ],
    ...['clockwise', 'runs clockwise', 'ccw', 'degrees', 'mark', ',', 'slack'],
  )
  fc.assert(
    fc.property(fc.array(word, { maxLength: 8 }), (words) => {
      const reading = readMisplaced(words.join(' '))
      if (!reading.understood) {
        expect(readMisplaced(reading.nearest).understood).toBe(true)
        return
      }
      const saysDegrees = words.some((each) => /^(?:deg|°|degrees)$/.test(each))
      expect(reading.value.measured.by === 'degrees').toBe(saysDegrees)
    }),
    { numRuns: 2000 },
  )
})
