import { describe, expect, test } from 'vitest'
import { inchText, readDecimal, readFraction, readWhole, tidy } from '../../src/trade/number.ts'

describe('numbers as they are written', () => {
  test.each([
    ['1.25', 1.25],
    ['1,25', 1.25],
    ['.5', 0.5],
    ['-2', -2],
    ['1.', undefined],
    ['1e3', undefined],
    ['1.2.3', undefined],
    ['', undefined],
    ['1234567890', undefined],
  ])('decimal %j is %j', (text, number) => {
    expect(readDecimal(text)).toBe(number)
  })

  test.each([
    ['3/4', 0.75],
    ['1-1/2', 1.5],
    ['1 1/2', 1.5],
    ['0.5', 0.5],
    ['1/0', undefined],
    ['1/2/3', undefined],
  ])('fraction %j is %j', (text, number) => {
    expect(readFraction(text)).toBe(number)
  })

  test.each([
    ['8', 8],
    ['twelve', 12],
    ['Two', 2],
    ['thirteen', undefined],
    ['2.0', undefined],
    ['-1', undefined],
  ])('whole number %j is %j', (text, number) => {
    expect(readWhole(text)).toBe(number)
  })

  test.each([
    [12.7, '1/2'],
    [38.1, '1-1/2'],
    [25.4, '1'],
    [0.396875, '1/64'],
    [7.62, '0.3'],
  ])('%d mm is %s in', (millimetres, text) => {
    expect(inchText(millimetres)).toBe(text)
  })

  test.each([
    ['1½', '1-1/2'],
    ['½', '1/2'],
    ['a\u00a0 b', 'a b'],
    ['M8×45', 'M8x45'],
    ['5″–6″', '5"-6"'],
  ])('%j in plain signs is %j', (text, plain) => {
    expect(tidy(text)).toBe(plain)
  })
})
