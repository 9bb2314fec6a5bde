import { expect, test } from 'vitest'
import { countText, percentDown, percentUp, shareText } from './share-text.ts'

test.each([
  [0, '0 %', '0 %'],
  [1, '100 %', '100 %'],
  [0.999, '99.9 %', '99.9 %'],
  [0.07, '7 %', '7 %'],
  [0.99999, '99.99 %', '100 %'],
  [0.00001, '0 %', '0.01 %'],
])('%d is %s downwards and %s upwards', (share, down, up) => {
  expect(percentDown(share)).toBe(down)
  expect(percentUp(share)).toBe(up)
})

test.each([
  // R 3.6.2, binom.test, as kept in the tests of SciPy: 0.1266... to 0.2918..., 0.6915029 to 1, 0 to 0.3084971.
  [20, 100, '20 % (12.66 % to 29.19 %)'],
  [10, 10, '100 % (69.15 % to 100 %)'],
  [0, 10, '0 % (0 % to 30.85 %)'],
  [0, 0, 'none made'],
])('%d of %d', (hits, tries, text) => expect(shareText(hits, tries)).toBe(text))

test('one missed of many never reads as all, and one seen never as none', () => {
  expect(shareText(99_999, 100_000)).toBe('99.99 % (99.99 % to 100 %)')
  expect(shareText(1, 100_000)).toBe('under 0.01 % (0 % to 0.01 %)')
})

test('a count has its thousands apart', () => expect(countText(1_234_567)).toBe('1,234,567'))
