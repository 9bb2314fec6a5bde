import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readPositions } from '../../src/trade/positions.ts'

describe('positions as they are written', () => {
  test.each([
    ['I1..I4', 'I1 I2 I3 I4'],
    ['I1..4', 'I1 I2 I3 I4'],
    ['I1…I4', 'I1 I2 I3 I4'],
    ['I1 .. I4', 'I1 I2 I3 I4'],
    ['E1-E4', 'E1 E2 E3 E4'],
    ['1..3,5', '1 2 3 5'],
    ['1..3, 5', '1 2 3 5'],
    ['1 to 4', '1 2 3 4'],
    ['A1,A2,B1', 'A1 A2 B1'],
    ['in1..in4', 'in1 in2 in3 in4'],
    ['i1..I2', 'i1 i2'],
    ['1L 2L', '1L 2L'],
    ['1L..3L', '1L 2L 3L'],
    ['A..D', 'A B C D'],
    ['left,right', 'left right'],
    ['4', '4'],
    // Descending: the order is kept.
    ['4..1', '4 3 2 1'],
    ['12..9', '12 11 10 9'],
    ['d..b', 'd c b'],
    ['01..03', '01 02 03'],
    ['8..11', '8 9 10 11'],
    ['3..3', '3'],
  ])('%s', (typed, positions) => {
    expect(readPositions(typed)).toEqual({ understood: true, value: positions.split(' ') })
  })

  test.each([
    ['', 'empty', '', 'I1..I4'],
    [' , ', 'empty', '', 'I1..I4'],
    ['I1..E4', 'range', 'I1..E4', 'I1..I4'],
    ['A-1', 'range', 'A-1', 'A1'],
    ['A..d', 'range', 'A..d', 'A..D'],
    ['left..right', 'range', 'left..right', 'A..D'],
    ['I1,I1', 'duplicate', 'I1', 'I1'],
    ['1..4,3,i4', 'duplicate', '3', '1,2,3,4,i4'],
    ['I1..I40000', 'too-many', 'I1..I40000', 'I1..I200'],
    ['1..201', 'too-many', '1..201', '1..200'],
    ['1..150,300..400', 'too-many', '300..400', '1..150'],
    ['I1..', 'form', 'I1..', 'I1'],
    ['@', 'form', '@', 'I1'],
    ['1..2..3', 'form', '1..2..3', '123'],
  ])('%j: %s', (typed, code, part, nearest) => {
    expect(readPositions(typed)).toEqual({ understood: false, code, part, nearest })
    expect(readPositions(nearest)).toMatchObject({ understood: true })
  })

  test('200 positions are read', () => {
    const reading = readPositions('1..200')
    expect(reading.understood && reading.value.length).toBe(200)
  })
})

test('a range and the list it stands for are the same', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('', 'I', 'ex', 'Ä'),
      fc.integer({ min: 0, max: 9000 }),
      fc.integer({ min: -199, max: 199 }),
      (prefix, first, step) => {
        const last = Math.max(0, first + step)
        const numbers = Array.from(
          { length: Math.abs(last - first) + 1 },
          (_, i) => first + Math.sign(last - first) * i,
        )
        const list = numbers.map((number) => `${prefix}${number}`)
        expect(readPositions(`${prefix}${first}..${prefix}${last}`)).toEqual({
          understood: true,
          value: list,
        })
        expect(readPositions(list.join(','))).toEqual({ understood: true, value: list })
      },
    ),
  )
})

test('any text gives at most 200 different positions, or a form that is read', () => {
  const pieces = fc.constantFrom('I', '1', '9', '..', '-', ',', ' ', 'A', '@', '0', 'L', '…', '.')
  fc.assert(
    fc.property(fc.array(pieces, { maxLength: 12 }), (typed) => {
      const reading = readPositions(typed.join(''))
      const positions = reading.understood ? reading.value : readPositions(reading.nearest)
      if (!Array.isArray(positions)) expect(positions.understood).toBe(true)
      else expect(new Set(positions.map((p) => p.toLowerCase())).size).toBe(positions.length)
      if (reading.understood) expect(reading.value.length).toBeLessThanOrEqual(200)
    }),
    { numRuns: 2000 },
  )
})
