import fc from 'fast-check'
import { expect, test } from 'vitest'
import { middleOf } from '../../../src/trade/tightening-passes/tolerance.ts'

test.each([
  // TM 5-3805-258-24-2 and TM 5-3825-226-24, and vehicle service data.
  ['40 +/- 4 N-m', '40 N-m'],
  ['30 ± 3 lb-ft', '30 lb-ft'],
  ['120 ± 5 deg', '120 deg'],
  ['37-43 N-m', '40 N-m'],
  ['85-95 deg', '90 deg'],
  ['40 Nm ± 4', '40 Nm'],
  ['40 Nm ± 4 nm', '40 Nm'],
  ['40 Nm ± 10 %', '40 Nm'],
  ['36,5..43,5 Nm', '40 Nm'],
  ['36 Nm to 44 Nm', '40 Nm'],
])('the middle of %s', (text, middle) => {
  expect(middleOf(text)).toBe(middle)
})

test.each([
  '40 ± 40 Nm',
  '40 Nm ± 4 lbf·ft',
  '40 Nm ± 100 %',
  '40 ± 4',
  '40 ± 10 %',
  '43-37 Nm',
  '40..40 Nm',
  '36 Nm - 44 lbf·ft',
])('%s has none', (text) => {
  expect(middleOf(text)).toBe('wrong')
})

test.each(['40 Nm', '1-1/2 turns', '-90 deg', '+ 90 deg', '', 'N-m'])('%j is one value', (text) => {
  expect(middleOf(text)).toBeUndefined()
})

test('a tolerance and its ends have one middle', () => {
  const sizes = fc.tuple(fc.integer({ min: 2, max: 3000 }), fc.integer({ min: 1, max: 3000 }))
  fc.assert(
    fc.property(
      sizes.filter(([middle, off]) => off < middle),
      ([middle, off]) => {
        expect(middleOf(`${middle - off}..${middle + off} Nm`)).toBe(middleOf(`${middle} ± ${off} Nm`))
      },
    ),
  )
})
