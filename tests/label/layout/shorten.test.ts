import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cutEnd, shorten } from '../../../src/label/layout/shorten.ts'

const within = (most: number) => (text: string) => text.length <= most

describe('names are cut, figures are not', () => {
  test.each([
    ['8 × valve cover bolts M6x25 hex 8', 26, '8 × valve cov… M6x25 hex 8'],
    ['8 × valve cover bolts M6x25 hex 8', 18, '8 × v… M6x25 hex 8'],
    ['8 × cam caps I1–I4, E1–E4', 22, '8 × cam… I1–I4, E1–E4'],
    ['cylinder head / intake cam caps / I1–I8, step 12', 40, 'cylinder… / intake ca… / I1–I8, step 12'],
    ['cylinder head, step 4; cam carrier, step 5', 34, 'cylinder… step 4; cam carr… step 5'],
    ['the blue twin in the far corner', 14, 'the blue twin…'],
    ['Ölfiltergehäusedeckelschraube', 10, 'Ölfilterg…'],
  ])('%s in %d', (text, most, short) => {
    expect(shorten(text, within(most))).toBe(short)
  })

  test('what is nothing but figures is not cut', () => {
    expect(shorten('8 × M6x25', within(5))).toBeNull()
  })

  test('a number of forty digits is a name', () => {
    expect(shorten('1'.repeat(40), within(10))).toBe(`${'1'.repeat(9)}…`)
  })

  test('no mark is torn from its letter', () => {
    const text = 'e\u0301'.repeat(20)
    const short = shorten(text, (each) => each.length <= 15)
    expect(short).toBe(`${'e\u0301'.repeat(7)}…`)
  })
})

test('whatever is cut fits, is no longer than asked, and keeps every short figure', () => {
  const words = fc.array(fc.constantFrom('bolt', 'housing', 'M6x25', 'I1–I4', '×', '8', 'Ölpumpe'), {
    minLength: 1,
  })
  fc.assert(
    fc.property(words, fc.integer({ min: 1, max: 60 }), (parts, most) => {
      const short = shorten(parts.join(' '), within(most))
      if (short === null) return
      expect(short.length).toBeLessThanOrEqual(most)
      const figures = (text: string) => text.split(' ').filter((word) => /\d/.test(word))
      expect(figures(short)).toEqual(figures(parts.join(' ')))
    }),
  )
})

describe('cut at its end', () => {
  test.each([
    // No space is left before the dots.
    ['001 Müller & Söhne / "red" twin', 21, '001 Müller & Söhne /…'],
    ['001 Müller & Söhne', 8, '001 Mül…'],
    ['001 Müller', 5, '001…'],
  ])('%s in %d', (text, most, short) => {
    expect(cutEnd(text, within(most))).toBe(short)
  })

  test('not within its first word', () => {
    expect(cutEnd('001 Müller', within(3))).toBeNull()
  })
})
