import fc from 'fast-check'
import stringWidth from 'string-width'
import { describe, expect, test } from 'vitest'
import { brief, cut, line, padded, spread, strong, textOf, widthOf, wrap } from '../../../src/ui/text/line.ts'

const anyText = fc.stringMatching(/^[a-z漢字é ×✓-]{0,60}$/)

describe('a line of the screen', () => {
  test('gives up label codes in brackets before words', () => {
    const text = line('fit 1 × cover, in bag 4 (002 0004 32)')
    expect(textOf(brief(text, 37))).toBe('fit 1 × cover, in bag 4 (002 0004 32)')
    expect(textOf(brief(text, 36))).toBe('fit 1 × cover, in bag 4')
    expect(textOf(brief(text, 20))).toBe('fit 1 × cover, in ..')
  })

  test.each([
    ['steers', 'a\x1b[2Jb\x9b31m\r\n\u2028', 'a[2Jb31m'],
    ['turns text around', 'a\u202eb\u2066c', 'abc'],
    ['hides', 'a\u200bb\u00ad\u3164\u{e0041}\u26a0\ufe0f', 'ab\u26a0'],
    ['is half a character', 'a\ud800b', 'ab'],
  ])('shows nothing that %s', (_, text, shown) => {
    expect(textOf(line(text))).toBe(shown)
  })

  test('is cut at whole characters, with two dots', () => {
    expect(textOf(cut(line('valve cover bolts'), 10))).toBe('valve co..')
    expect(textOf(cut(line('漢字漢字漢字'), 7))).toBe('漢字..')
    expect(textOf(cut(line('short'), 5))).toBe('short')
  })

  test('keeps what stands out when it is cut', () => {
    expect(cut(line(strong('bag 5'), ' cover bolts'), 9)).toEqual([
      strong('bag 5'),
      { text: ' c', tone: 'plain' },
      { text: '..', tone: 'plain' },
    ])
  })

  test('is broken between words, and rows after the first are hung', () => {
    expect(wrap(line('1 ', strong('valve cover'), ' bolts M6x25'), 14, 2).map(textOf)).toEqual([
      '1 valve cover',
      '  bolts M6x25',
    ])
  })

  test('is not broken before the full stop behind a word that stands out', () => {
    const parts = line('say ', strong('"done 12"'), '. Then go on')
    expect(wrap(parts, 13).map(textOf)).toEqual(['say "done', '12". Then go', 'on'])
  })

  test('is broken neither within a label code nor between a count and what it counts, nor before the number of a step', () => {
    expect(wrap(line('2 nuts and 1 × rag'), 13).map(textOf)).toEqual(['2 nuts and', '1 × rag'])
    expect(wrap(line('in tray 1 (001 0001 68).'), 14).map(textOf)).toEqual(['in tray 1', '(001 0001 68).'])
    expect(wrap(line('belongs to cover, step 12'), 22).map(textOf)).toEqual(['belongs to cover,', 'step 12'])
  })

  test('is broken inside a word that is longer than a row', () => {
    expect(wrap(line('a veryverylongword b'), 8).map(textOf)).toEqual(['a', 'veryvery', 'longword', 'b'])
  })

  test('of any text never takes more columns than it may', () => {
    fc.assert(
      fc.property(anyText, anyText, fc.integer({ min: 4, max: 40 }), (left, right, width) => {
        expect(widthOf(cut(line(left), width))).toBeLessThanOrEqual(width)
        expect(widthOf(padded(line(left), width))).toBe(width)
        expect(widthOf(spread(line(left), line(right), width))).toBe(width)
        for (const row of wrap(line(left, right), width, 2)) expect(widthOf(row)).toBeLessThanOrEqual(width)
      }),
    )
  })

  test('is as wide as a library for it says, sign by sign and behind signs that join', () => {
    const codes = [
      [0x20, 0x400],
      [0x2000, 0x2060],
      [0x2500, 0x2760],
    ] as const
    const signs = codes.flatMap(([from, to]) =>
      Array.from({ length: to - from }, (_, index) => String.fromCodePoint(from + index)),
    )
    const texts = signs.flatMap((sign) => [sign, `a${sign}`, `✓${sign}b`])
    expect(texts.filter((text) => widthOf(text) !== stringWidth(text))).toEqual([])
    expect(textOf(cut(line('ab\u0301c'), 2))).toBe('..')
    expect(textOf(cut(line('ab\u0301cde'), 4))).toBe('ab\u0301..')
  })

  test('as long as a record can hold is cut and broken too', () => {
    const name = 'W'.repeat(300_000)
    expect(textOf(cut(line(name), 80))).toBe(`${'W'.repeat(78)}..`)
    expect(wrap(line(name), 80)).toHaveLength(3750)
  })

  test('that is broken loses no word', () => {
    fc.assert(
      fc.property(anyText, fc.integer({ min: 4, max: 40 }), (text, width) => {
        const letters = (value: string) => value.replace(/\s/g, '')
        expect(letters(wrap(line(text), width, 2).map(textOf).join(''))).toBe(letters(text))
      }),
    )
  })
})
