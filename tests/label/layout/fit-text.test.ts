import { describe, expect, test } from 'vitest'
import type { Column } from '../../../src/label/layout/column.ts'
import { spanAt } from '../../../src/label/layout/column.ts'
import { fitText, type Style, setText } from '../../../src/label/layout/fit-text.ts'
import { typeface } from '../../../src/print/fonts.ts'

const style: Style = { typeface: typeface(), size: 3, weight: 'strong' }
const column = (width: number, height: number, taken: Column['taken'] = []): Column => ({
  area: { x: 0, y: 0, width, height },
  taken,
})
const linesOf = (text: string, ...rest: [Column, number?]) =>
  setText(text, style, ...rest)?.lines.map((line) => line.text)

describe('lines', () => {
  test('a count keeps its name, and a number its word', () => {
    expect(linesOf('8 × valve cover bolts M6x25 hex 8', column(24, 40))).toEqual([
      '8 × valve cover',
      'bolts M6x25',
      'hex 8',
    ])
  })

  test('each line is as wide as it is free there', () => {
    const beside = { x: 20, y: 0, width: 20, height: 4 }
    const set = setText('cam caps of the cylinder head', style, column(40, 40, [beside]))
    expect(set?.lines.map(({ text, span }) => [text, span.width])).toEqual([
      ['cam caps of', 20],
      ['the cylinder', 20],
      ['head', 40],
    ])
  })

  test('a word that fits below is not broken, one that fits nowhere is', () => {
    const beside = { x: 8, y: 0, width: 32, height: 4 }
    expect(linesOf('radiator', column(40, 12, [beside]))).toEqual(['radiator'])
    expect(linesOf('Nockenwellenversteller', column(20, 40))?.join('')).toBe('Nockenwellenversteller')
    expect(setText('Nockenwellenversteller', { ...style, breaks: false }, column(20, 40))).toBeNull()
  })

  test('a long word is broken at its hyphen', () => {
    expect(linesOf('Nockenwellen-Zentralschraube', column(36, 40))).toEqual([
      'Nockenwellen-',
      'Zentralschraube',
    ])
  })

  test('too many lines, or too low a column, is no setting', () => {
    expect(linesOf('cam caps of the cylinder head', column(20, 40), 1)).toBeUndefined()
    expect(linesOf('cam caps of the cylinder head', column(20, 4))).toBeUndefined()
  })

  test('what does not fit into so many lines is shortened, and says so', () => {
    const set = fitText('16 × cam cap bolts M7x40', style, column(30, 40), 1)
    expect(set).toMatchObject({
      shortened: true,
      lines: [{ text: expect.stringMatching(/^16 × cam.*… M7x40$/) }],
    })
    expect(fitText('16 × M7x40', style, column(30, 40), 1)).toMatchObject({ shortened: false })
  })
})

describe('spans', () => {
  const left = { x: 0, y: 5, width: 10, height: 10 }
  const middle = { x: 16, y: 0, width: 4, height: 8 }

  test.each([
    ['above all', 20, 30, [left, middle], { x: 0, width: 40 }],
    ['beside the left one', 9, 12, [left, middle], { x: 10, width: 30 }],
    ['the wider side of the middle one', 0, 4, [left, middle], { x: 20, width: 20 }],
    ['just below does not touch', 8, 9, [middle], { x: 0, width: 40 }],
    ['nothing is left', 0, 4, [{ x: -1, y: 0, width: 50, height: 9 }], { x: 0, width: 0 }],
  ])('%s', (_, top, bottom, taken, span) => {
    expect(spanAt(column(40, 40, taken), top, bottom)).toEqual(span)
  })
})
