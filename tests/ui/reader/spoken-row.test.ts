import { describe, expect, test } from 'vitest'
import { numbered } from '../../../src/ui/model/rows.ts'
import {
  isHeading,
  rowSentence,
  sentence,
  spokenHeading,
  spokenRow,
} from '../../../src/ui/reader/spoken-row.ts'
import { chip, chipColumn, SIGNS } from '../../../src/ui/signs.ts'
import { drawn, large, line, strong } from '../../../src/ui/text/line.ts'

describe('a row for the ear', () => {
  test('has its number, its state as a word, and no columns', () => {
    const row = line(strong(' 12'), '  ', ...chipColumn(SIGNS.underway, 15), ' ', strong('cylinder head'))
    expect(spokenRow(row)).toEqual([{ no: 12, text: 'under way, cylinder head' }])
  })

  test('comes apart where choices stand beside each other', () => {
    const row = line(strong('  7'), '  another job', '  ', strong('  9'), '  leave')
    expect(spokenRow(row)).toEqual([
      { no: 7, text: 'another job' },
      { no: 9, text: 'leave' },
    ])
  })

  test('keeps a number that is no choice', () => {
    expect(spokenRow(line('8 × bolts, ', strong('7'), ' home'))).toEqual([
      { no: null, text: '8 × bolts, 7 home' },
    ])
  })

  test('is nothing where it is large letters, a symbol or a drawing', () => {
    expect(spokenRow(line('     ', large('██ ██')))).toEqual([])
    expect(spokenRow([{ text: '▀▄', tone: 'raw' }])).toEqual([])
    expect(spokenRow([drawn('A1   '), strong('A2')])).toEqual([])
    expect(rowSentence([drawn('A1   A2')])).toBe('')
  })

  test('says no sign of any state, only its word', () => {
    for (const sign of Object.values(SIGNS)) {
      expect(rowSentence(line(strong('bag 1'), '  ', chip(sign)))).toBe(`Bag 1, ${sign.word.toLowerCase()}.`)
    }
  })

  test('says what it is by the word in capitals before it', () => {
    expect(spokenRow(line(strong('NEXT'), '  take up step 2'))).toEqual([
      { no: null, text: 'next: take up step 2' },
    ])
    expect(spokenRow(numbered(3, line(strong('EGR valve')), 200)[0] ?? [])).toEqual([
      { no: 3, text: 'EGR valve' },
    ])
  })

  test('keeps words to type as they are typed', () => {
    expect(rowSentence(line('     · "override 2 because ..." lifts it'))).toBe(
      '"override 2 because ..." lifts it.',
    )
    expect(sentence('row by row "1 2 / . 3"')).toBe('Row by row "1 2 / . 3".')
  })
})

test('a heading is a row in capitals that begins at the edge', () => {
  expect(isHeading([strong('LAST DONE')])).toBe(true)
  expect(isHeading([strong('     NEXT: FIT')])).toBe(false)
  expect(isHeading(line(strong('WHAT COMES OFF'), '  no step is open'))).toBe(false)
  expect(spokenHeading([strong('THE SAME AGAIN: a number, then the count')])).toBe(
    'the same again: a number, then the count',
  )
})
