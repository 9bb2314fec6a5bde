import { describe, expect, test } from 'vitest'
import { largeRows } from '../../../src/ui/controls/big-letters/large-rows.ts'
import type { Large } from '../../../src/ui/page.ts'
import { line, strong, textOf } from '../../../src/ui/text/line.ts'

const bolt = said('I3', ['24 N·m', 'pass 2 of 3', '5 of 10 through'], 1)

/** Between the rules of a terminal of 80 by 24, of 160 by 48, and of the smallest. */
const USUAL = [80, 16] as const
const WIDE = [160, 40] as const
const SMALLEST = [64, 10] as const

describe('a bolt with its torque', () => {
  test('both large, the rest under them', () => {
    const { letters, words } = drawn(bolt, ...USUAL)
    expect(letters).toBe(5 + 5)
    expect(words).toEqual(['pass 2 of 3', '5 of 10 through'])
  })

  test('three times as large where there is room', () => {
    const { letters, words } = drawn(bolt, ...WIDE)
    expect(letters).toBe(15 + 15)
    expect(words).toEqual(['pass 2 of 3', '5 of 10 through'])
  })

  test('on the smallest terminal the bolt alone, with all of its words', () => {
    const { letters, words } = drawn(bolt, ...SMALLEST)
    expect(letters).toBe(5)
    expect(words).toEqual(['24 N·m', 'pass 2 of 3', '5 of 10 through'])
  })

  test.each([
    [9, ['24 N·m, pass 2 of 3, 5 of 10 through']],
    [8, ['24 N·m, pass 2 of 3, 5 of 10 through']],
    [7, ['24 N·m, pass 2 of 3, 5 of 10 through']],
    [6, []],
    [5, []],
  ])('on %i rows its words stand in one, at last not at all', (height, expected) => {
    expect(drawn(bolt, 64, height)).toEqual({ letters: 5, words: expected })
  })

  test('never is it nothing', () => {
    expect(largeRows(bolt, 64, 4).map(textOf)).toEqual([
      '   I3',
      '   24 N·m',
      '   pass 2 of 3',
      '   5 of 10 through',
    ])
  })
})

describe('a label code', () => {
  test.each([
    [USUAL, 11, 8],
    [SMALLEST, 5, 4],
    [WIDE, 33, 16],
  ])('on %j: in full, %i rows, a digit %i columns wide', ([width, height], rows, digit) => {
    const code = largeRows(said('017 0042 95', ['bag 42']), width, height).map(textOf)
    const first = code.findIndex((row) => row.includes('█'))
    const inked = code.filter((row) => row.includes('█'))
    const gaps = code.slice(first, first + rows).filter((row) => row.trim() === '')
    expect(inked.length + gaps.length).toBe(rows)
    // The foot of the 1 is three squares of the four of a digit.
    const bars = inked.join(' ').match(/█+/g) ?? []
    expect(Math.max(...bars.map(({ length }) => length))).toBe(digit)
  })

  test('it is not drawn narrower so that its words are large too', () => {
    const { letters, words } = drawn(said('017 0042 95', ['bag 42', 'CAM CAPS'], 2), ...USUAL)
    expect(letters).toBe(5 + 5)
    expect(words).toEqual(['bag 42', 'CAM CAPS'])
  })
})

test('what the font lacks is written, with its words', () => {
  expect(largeRows(said('Ω1', ['pass 1 of 2']), ...USUAL).map(textOf)).toEqual(['   Ω1', '   pass 1 of 2'])
})

test('a torque that the font lacks is a word under the bolt', () => {
  const { letters, words } = drawn(said('I3', ['2.4 kgf·m', 'pass 1 of 2'], 1), ...USUAL)
  expect(letters).toBe(10)
  expect(words).toEqual(['2.4 kgf·m', 'pass 1 of 2'])
})

function said(letters: string, under: readonly string[], more = 0): Large {
  return { letters, under: under.map((text) => line(strong(text))), more }
}

/** How many rows of letters there are, and what is written under them. */
function drawn(large: Large, width: number, height: number): { letters: number; words: string[] } {
  const rows = largeRows(large, width, height)
  expect(rows.length).toBeLessThanOrEqual(height)
  const isLetters = (row: (typeof rows)[number]) => row.some(({ tone }) => tone === 'large')
  const inked = rows.filter((row) => isLetters(row) && textOf(row).includes('█'))
  const words = rows.filter((row) => !isLetters(row)).map((row) => textOf(row).trim())
  return { letters: inked.length, words: words.filter((row) => row !== '') }
}
