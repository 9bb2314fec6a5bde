import fc from 'fast-check'
import { expect, test } from 'vitest'
import { answerRows } from '../../src/ui/answer.ts'
import { SIGNS } from '../../src/ui/signs.ts'
import { textOf } from '../../src/ui/text/line.ts'

const reasons = Array.from({ length: 12 }, (_, index) => `reason ${index + 1}`)

test('of many reasons as many stand there as fit; what and what to do always do', () => {
  const told = { what: 'Step 12 cannot start yet.', lines: reasons, cure: 'Lift them, then "take 12".' }
  expect(answerRows({ sign: SIGNS.refused, told }, 60, 6).map(textOf)).toEqual([
    ' X REFUSED  Step 12 cannot start yet.',
    '   · reason 1',
    '   · reason 2',
    '   · reason 3',
    '   · and 9 more',
    '   Lift them, then "take 12".',
  ])
})

test('words to type stand out', () => {
  const told = { what: 'Not yet.', lines: [], cure: 'Say "look 1" first.' }
  const [, cure] = answerRows({ sign: null, told }, 60)
  expect(cure?.filter(({ tone }) => tone === 'strong').map(({ text }) => text)).toEqual(['"look 1"'])
})

test('an answer never takes more rows than it may, as long as it may have a few', () => {
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom('short', 'x '.repeat(90)), { maxLength: 30 }),
      fc.integer({ min: 4, max: 12 }),
      (lines, most) => {
        const rows = answerRows({ sign: null, told: { what: 'What.', lines, cure: 'Cure.' } }, 60, most)
        expect(rows.length).toBeLessThanOrEqual(most)
        expect(textOf(rows.at(-1) ?? [])).toContain('Cure.')
      },
    ),
  )
})
