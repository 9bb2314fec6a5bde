import fc from 'fast-check'
import { expect, test } from 'vitest'
import { rangesText, slottedText } from '../../../src/words/label-text/position-ranges.ts'

test.each([
  [['I1', 'I2', 'I3', 'I4'], 'I1–I4'],
  [['I1', 'I2', 'I4'], 'I1, I2, I4'],
  [['I1', 'I2', 'I3', 'E1', 'E2', 'E3'], 'I1–I3, E1–E3'],
  [['1', '2', '3', '5', '6'], '1–3, 5, 6'],
  [['9', '10', '11'], '9–11'],
  // What does not go on is not told as if it did.
  [['I3', 'I2', 'I1'], 'I3, I2, I1'],
  [['I1', 'II2', 'I3'], 'I1, II2, I3'],
  [['radiator', 'pump'], 'radiator, pump'],
  [[], ''],
])('%j reads %j', (positions, text) => {
  expect(rangesText(positions)).toBe(text)
})

test('with the marks of a written line', () => {
  expect(rangesText(['1', '2', '3', '5', '6'], '..', ',')).toBe('1..3,5,6')
})

test.each([
  [['I1 1', 'I2 2', 'I3 3', 'E1 4'], 'I1–I3 in slots 1–3, E1 in slot 4'],
  [['I1 4', 'I2 5'], 'I1, I2 in slots 4 and 5'],
  // A swap in the tray breaks the run: which piece lies where must stay plain.
  [['I1 1', 'I2 3', 'I3 2', 'I4 4'], 'I1 in slot 1, I2 in slot 3, I3 in slot 2, I4 in slot 4'],
  [['I1 ', 'I2 ', 'I3 '], 'I1–I3'],
])('%j in slots reads %j', (rows, text) => {
  const slotted = rows.map((row) => {
    const [position = '', slot = ''] = row.split(' ')
    return { position, slot: slot === '' ? undefined : slot }
  })
  expect(slottedText(slotted)).toBe(text)
})

test('every position can be read out again, in its order', () => {
  const position = fc.tuple(fc.constantFrom('I', 'E', 'A', ''), fc.integer({ min: 1, max: 12 }))
  fc.assert(
    fc.property(
      fc.uniqueArray(position, { selector: ([letter, n]) => `${letter}${n}`, maxLength: 12 }),
      (pairs) => {
        const positions = pairs.map(([letter, n]) => `${letter}${n}`)
        const read = rangesText(positions)
          .split(', ')
          .filter((part) => part !== '')
          .flatMap((part) => {
            const [from = '', to] = part.split('–')
            if (to === undefined) return [from]
            const letter = from.replace(/\d+$/, '')
            const [first, last] = [Number(from.slice(letter.length)), Number(to.slice(letter.length))]
            return Array.from({ length: last - first + 1 }, (_, n) => `${letter}${first + n}`)
          })
        expect(read).toEqual(positions)
      },
    ),
  )
})
