import { expect, test } from 'vitest'
import { bigLetters, bigLines } from '../../../src/ui/controls/big-letters/big-letters.ts'
import { GLYPHS } from '../../../src/ui/controls/big-letters/glyphs.ts'
import { SIGNS } from '../../../src/ui/signs.ts'

test('a position, at least five rows high', () => {
  expect(bigLetters('e3', 80)).toEqual([
    '██████ ██████',
    '██         ██',
    '█████   █████',
    '██         ██',
    '██████ ██████',
  ])
})

test('is as large as there is room for', () => {
  expect(bigLetters('I3', 80, 24)).toHaveLength(15)
  expect(bigLetters('I3', 80, 14)).toHaveLength(10)
  expect(bigLetters('I3', 20, 14)).toHaveLength(5)
})

test('is null where it does not fit or cannot be drawn', () => {
  expect(bigLetters('017 0042 95', 40)).toBeNull()
  expect(bigLetters('漢', 80)).toBeNull()
  expect(bigLetters('', 80)).toBeNull()
})

test('every letter and digit is drawn, and no two alike', () => {
  const alphabet = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789']
  expect(alphabet.filter((character) => !GLYPHS.has(character))).toEqual([])
  const drawings = alphabet.map((character) =>
    GLYPHS.get(character)
      ?.map((row) => row.trimEnd())
      .join('\n'),
  )
  expect(new Set(drawings).size).toBe(alphabet.length)
})

test('a label code and every verdict fit on 80 columns', () => {
  expect(bigLetters('017 0042 95', 76)).not.toBeNull()
  const { fitsNow, notYet, otherStep, empty, nothingToFit, otherJob, unknown, misread } = SIGNS
  for (const { word } of [
    fitsNow,
    notYet,
    otherStep,
    empty,
    nothingToFit,
    otherJob,
    unknown,
    misread,
    SIGNS.void,
  ]) {
    expect(bigLetters(word, 75)).not.toBeNull()
  }
})

test('lines under each other are broken between words, and stand with an empty row between', () => {
  const rows = bigLines(['001 0003', '8 CAM CAPS @I1–I4,E1', '> STEP 9'], 76, 30) ?? []
  expect(rows.filter((row) => row === '')).toHaveLength(3)
  expect(rows).toHaveLength(4 * 5 + 3)
  expect(Math.max(...rows.map(({ length }) => length))).toBeLessThanOrEqual(76)
})

test('lines are null where a row is missing, or a word is too wide or cannot be drawn', () => {
  expect(bigLines(['A', 'B'], 20, 10)).toBeNull()
  expect(bigLines(['A', 'B'], 20, 11)).toHaveLength(11)
  expect(bigLines(['CAMSHAFTS'], 40, 30)).toBeNull()
  expect(bigLines(['A', '漢'], 40, 30)).toBeNull()
})
