import { describe, expect, test } from 'vitest'
import { bigLetters } from '../../../src/ui/controls/big-letters/big-letters.ts'
import { SIGNS } from '../../../src/ui/signs.ts'

const DIGITS = [...'0123456789']
const ALL = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ', ...DIGITS, '/', '-', '.']

test('a position, at least five rows high', () => {
  expect(bigLetters('e3', 80)?.map((row) => row.trimEnd())).toEqual([
    '████████  ██████',
    '██              ██',
    '██████      ████',
    '██              ██',
    '████████  ██████',
  ])
})

describe('no two are taken for each other', () => {
  // Two squares are four cells, as letters are usually drawn.
  test('any two differ in two squares, however they are laid over each other; digits in three', () => {
    expect(pairs(ALL).filter(([a, b]) => squaresApart(a, b) < 2)).toEqual([])
    expect(pairs(DIGITS).filter(([a, b]) => squaresApart(a, b) < 3)).toEqual([])
  })

  test('nor a digit for the letter that it looks like', () => {
    const alike = ['0D', '0Q', '1I', '1L', '2Z', '6G', '7T', '8B']
    expect(alike.filter((pair) => squaresApart(pair.charAt(0), pair.charAt(1)) < 3)).toEqual([])
  })

  test('the zero has its slash, and the 1 its foot and its flag', () => {
    const squares = (character: string) => squaresOf(character).map((row) => row.join(''))
    expect(squares('0')).toEqual([' ## ', '#  #', '# ##', '## #', ' ## '])
    expect(squares('O')).toEqual([' ## ', '#  #', '#  #', '#  #', ' ## '])
    expect(squares('1')).toEqual(['  # ', ' ## ', '  # ', '  # ', ' ###'])
  })
})

test('digits share one width, so that numbers under each other line up', () => {
  const widths = DIGITS.map((digit) => bigLetters(digit, 80)?.[0]?.length)
  expect(new Set(widths)).toEqual(new Set([8]))
})

test('nothing but full blocks and spaces is drawn', () => {
  const drawn = Array.from({ length: 0x250 }, (_, code) => String.fromCodePoint(code)).flatMap(
    (character) => bigLetters(character, 80) ?? [],
  )
  expect(drawn.length).toBeGreaterThan(5 * 60)
  expect(drawn.filter((row) => !/^[█ ]+$/.test(row))).toEqual([])
})

test('a unit keeps its small letters, for M is not m', () => {
  expect(bigLetters('24 N·m', 80)).not.toBeNull()
  expect(bigLetters('24 N·m', 80)).not.toEqual(bigLetters('24 N·M', 80))
  expect(bigLetters('24 nm', 80)).toEqual(bigLetters('24 NM', 80))
})

describe('what the font lacks is left to plain text', () => {
  test.each(['漢', 'É', '🔧', 'A漢', 'BAG\nB'])('%j', (text) => {
    expect(bigLetters(text, 200)).toBeNull()
  })

  // A letter that hangs below its line would lose its tail.
  test('kgf·m', () => {
    expect(bigLetters('2 kgf·m', 200)).toBeNull()
    expect(bigLetters('2 lbf·ft', 200)).not.toBeNull()
  })

  test('nothing is no text', () => {
    expect(bigLetters('', 80)).toBeNull()
    expect(bigLetters([], 80)).toBeNull()
  })
})

describe('as large as there is room for', () => {
  test.each([
    [80, 24, 15],
    [80, 14, 10],
    [80, 9, 5],
    [20, 14, 10],
    [9, 14, 5],
  ])('on %i columns and %i rows: %i rows', (width, height, rows) => {
    expect(bigLetters('I3', width, height)).toHaveLength(rows)
  })

  test('null where it does not fit', () => {
    expect(bigLetters('I3', 80, 4)).toBeNull()
    expect(bigLetters('I3', 7, 24)).toBeNull()
    expect(bigLetters('CAMSHAFTS', 40, 30)).toBeNull()
  })

  test('words are broken onto lines where that makes them larger, with an empty row between', () => {
    const rows = bigLetters('017 0042 95', 74, 11) ?? []
    expect(rows).toHaveLength(11)
    expect(rows[5]).toBe('')
    expect(Math.max(...rows.map(({ length }) => length))).toBe(74)
    expect(bigLetters('017 0042 95', 74, 10)).toHaveLength(5)
  })

  test('texts under each other are of one size', () => {
    expect(bigLetters(['A', 'B'], 20, 10)).toBeNull()
    expect(bigLetters(['A', 'B'], 20, 11)).toHaveLength(11)
    expect(bigLetters(['A', 'B'], 20, 22)).toHaveLength(22)
    expect(bigLetters(['A', '漢'], 40, 30)).toBeNull()
  })
})

describe('in five rows', () => {
  test('a label code fits on 64 columns', () => {
    expect(bigLetters('017 0042 95', 58)).toHaveLength(5)
  })

  test.each(Object.values(SIGNS).map(({ word }) => word))('%s fits on 80 columns', (word) => {
    expect(bigLetters(word, 75)).toHaveLength(5)
  })
})

type Square = '#' | ' '

/** The squares of which a letter is made: each is drawn two columns wide. */
function squaresOf(character: string): Square[][] {
  const rows = bigLetters(character, 80) ?? []
  return rows.map((row) => [...row].flatMap((cell, at) => (at % 2 === 0 ? [cell === '█' ? '#' : ' '] : [])))
}

/** Where one is inked and the other is not, when they lie over each other as well as they can. */
function squaresApart(a: string, b: string): number {
  const [left, right] = [squaresOf(a), squaresOf(b)]
  const wide = (left[0]?.length ?? 0) + (right[0]?.length ?? 0)
  const shifts = Array.from({ length: 2 * wide + 1 }, (_, index) => index - wide)
  const apart = (shift: number) =>
    left.reduce((sum, row, y) => {
      const columns = Array.from({ length: 3 * wide }, (_, index) => index - wide)
      return sum + columns.filter((x) => (row[x] ?? ' ') !== (right[y]?.[x - shift] ?? ' ')).length
    }, 0)
  return Math.min(...shifts.map(apart))
}

function pairs(characters: readonly string[]): [string, string][] {
  return characters.flatMap((a, index) => characters.slice(index + 1).map((b): [string, string] => [a, b]))
}
