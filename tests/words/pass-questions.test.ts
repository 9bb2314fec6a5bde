import { expect, test } from 'vitest'
import { questionPasses } from '../../src/trade/tightening-passes/question-passes.ts'
import { readPasses } from '../../src/trade/tightening-passes/read-passes.ts'
import { passQuestionWords } from '../../src/words/pass-questions.ts'

test.each([
  [
    '20 Nm, 60 Nm, 40 Nm',
    'pass 3, 40 Nm, is less than pass 2, 60 Nm, and nothing is backed off in between: is it so in the manual?',
  ],
  [
    '60 Nm, check 55 Nm',
    'pass 2, check 55 Nm, is less than pass 1, 60 Nm: the wrench would click before a loose fastener shows',
  ],
  [
    '90 deg, 20 Nm',
    'pass 1, 90 deg, begins from a loose fastener: an angle counts from a torque or from snug',
  ],
  [
    '20 Nm, 270 deg, 112,5 deg',
    'the angles up to pass 3 add up to 382.5°, more than a full turn: is it so in the manual?',
  ],
  ['20 Nm, slacken', 'nothing is tightened after pass 2, slacken: are passes missing?'],
])('%s', (typed, words) => {
  const passes = readPasses(typed)
  if (!passes.understood) throw new Error(passes.part)
  expect(questionPasses(passes.value).map(passQuestionWords)).toEqual([words])
})
