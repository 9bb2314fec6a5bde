import { describe, expect, test } from 'vitest'
import { questionPasses } from '../../../src/trade/tightening-passes/question-passes.ts'
import { readPasses } from '../../../src/trade/tightening-passes/read-passes.ts'

const sixty = { pass: 1, typed: '60 Nm', newtonMetres: 60 }

describe('what is asked about passes', () => {
  test.each([
    [
      '20 Nm, 60 Nm, 40 Nm',
      { code: 'torque-falls', pass: 2, typed: '40 Nm', newtonMetres: 40, before: sixty },
    ],
    [
      '20 Nm, 60 Nm, check 55 Nm',
      { code: 'check-below', pass: 2, typed: 'check 55 Nm', newtonMetres: 55, before: sixty },
    ],
    ['60 Nm, mark', null],
    ['90 deg', { code: 'angle-from-loose', pass: 0, typed: '90 deg' }],
    ['20 Nm, back off, 90 deg', { code: 'angle-from-loose', pass: 2, typed: '90 deg' }],
    ['20 Nm, 180 deg, 180 deg, 90 deg', { code: 'angle-over-a-turn', pass: 3, degrees: 450 }],
    ['20 Nm, 400 deg, 90 deg', { code: 'angle-over-a-turn', pass: 1, degrees: 400 }],
    ['20 Nm, 40 Nm, back off', { code: 'ends-backed-off', pass: 2, typed: 'back off' }],
    ['20 Nm, 40 Nm, back off 180 deg, mark', { code: 'ends-backed-off', pass: 2, typed: 'back off 180 deg' }],
    ['20 Nm, 180 deg, 180 deg', null],
    ['snug, 90 deg', null],
    ['20 Nm, 20 Nm, check 20 Nm', null],
    // Torques of two units are compared as they are: 30 lbf·ft is 40.7 N·m.
    ['40 Nm, 30 lbf·ft', null],
  ])('%s', (typed, question) => {
    expect(asked(typed)).toEqual(question === null ? [] : [question])
  })

  test('all of them, in their order', () => {
    expect(asked('90 deg, 60 Nm, 40 Nm, back off').map(({ code }) => code)).toEqual([
      'angle-from-loose',
      'torque-falls',
      'ends-backed-off',
    ])
  })
})

// Published sequences ask nothing.
test.each([
  // TM 10-3930-669-20, appendix E.
  '29.5 lb-ft, 45 deg, 45 deg, 45 deg, 30 deg',
  // TM 10-3930-675-24-2.
  '50, 105, 155 lb-ft, back off fully, then the three passes again',
  // TM 5-3805-258-24-2.
  '40 ± 4 Nm, 90 deg',
  // Vehicle service data: the angles count anew after the loosening, 170 to 190 degrees in all.
  '37-43 Nm, 85-95 deg, loosen 360 deg, 37-43 Nm, 85-95 deg, 85-95 deg',
  '29, 69 Nm, back off 180 deg, back off 180 deg, 42 Nm, 80-90 deg, 40-45 deg, 40-45 deg',
  // ASME PCC-1.
  'hand tight, 30/70/100 % of 60 Nm, check 100 % clockwise',
])('published: %s', (typed) => {
  expect(asked(typed)).toEqual([])
})

function asked(typed: string) {
  const reading = readPasses(typed)
  if (!reading.understood) throw new Error(`${reading.code}: ${reading.part}`)
  return questionPasses(reading.value)
}
