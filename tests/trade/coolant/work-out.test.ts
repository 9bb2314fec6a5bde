import { describe, expect, test } from 'vitest'
import { readCoolant } from '../../../src/trade/coolant/read-coolant.ts'
import { workOutCoolant } from '../../../src/trade/coolant/work-out.ts'

function workedOut(text: string) {
  const question = readCoolant(text, { units: 'us' })
  if (!question.understood) throw new Error(text)
  return workOutCoolant(question.value)
}

// Where it freezes: tests/trade/coolant/freezing-point.test.ts; how much: drain-and-refill.test.ts.
describe('an answer', () => {
  test.each([
    [
      '10 L from 30 % to 50 %',
      { result: { code: 'drain-and-refill', litres: expect.closeTo(2.857, 3) }, percent: 50 },
    ],
    ['10 L from 50 % to 50 %', { result: { code: 'nothing-to-do' }, percent: 50 }],
    [
      '10 L drained 6 L from 30 % to 50 %',
      { result: { code: 'blend', sourceLitres: expect.closeTo(3.8, 9) }, percent: 50 },
    ],
    ['10 L drained 4 L from 30 % with premix', { result: { code: 'strength' }, percent: 38 }],
    ['2 L at 40 %', { result: { code: 'blend', sourceLitres: 0.8, waterLitres: 1.2 }, percent: 40 }],
    [
      '10 L drained 2 L from 0 % to 50 %',
      { result: { code: 'too-little-drained' }, percent: null, freezes: null },
    ],
    [
      '10 L from 30 % to 50 % with water',
      { result: { code: 'refill-too-weak' }, percent: null, freezes: null },
    ],
    ['10 L at 65 %', { freezes: { code: 'stronger-than-range' } }],
    [
      '10 L at 5 % propylene',
      { freezes: { code: 'weaker-than-range', noColderThan: expect.closeTo(-3.43, 2) } },
    ],
    ['12 qt at 50 %', { unit: { name: 'US qt' } }],
  ])('%s', (typed, answer) => {
    expect(workedOut(typed)).toMatchObject(answer)
  })
})
