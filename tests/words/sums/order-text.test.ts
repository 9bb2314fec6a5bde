import { describe, expect, test } from 'vitest'
import type { State } from '../../../src/journal/state.ts'
import { readLine } from '../../../src/lines/read-line.ts'
import { workOut } from '../../../src/session/work-out.ts'
import { sumText } from '../../../src/words/sum-text.ts'
import { nothing, told, topEnd } from '../../lines/told.ts'

const bolts = told(...topEnd, 'layout valve cover bolts: 2x4')

describe('an order that is only asked for', () => {
  test('of a grid', () => {
    expect(textOf('order 2x5', nothing).map((row) => row.trim().replace(/ {2,}/g, ' | '))).toEqual([
      '3, 8, 2, 9, 4, 7, 1, 10, 5, 6',
      'Rule: crosswise, common practice.',
      'Ring by ring from the middle outwards, straight across, the corners last.',
      '',
      '1 #7 | 2 #3 | 3 #1 | 4 #5 | 5 #9',
      '',
      '6 #10 | 7 #6 | 8 #2 | 9 #4 | 10 #8',
      '',
      'Loosened in reverse: 6, 5, 10, 1, 7, 4, 9, 2, 8, 3',
      'Other rules for it: "by spiral" and "by clockwise".',
      "The manual's own order goes before any rule.",
      'Worked out, not a specification: the service manual decides.',
    ])
  })

  // ASME PCC-1, legacy cross pattern.
  test('of a circle, with its source', () => {
    expect(textOf('order circle 12', nothing).slice(0, 3)).toEqual([
      '1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12',
      'Rule: star, the legacy cross pattern of ASME PCC-1.',
      'Straight across, then the pairs between.',
    ])
  })

  test.each([
    [
      'order circle 20',
      'Rule: star, after the legacy cross pattern of ASME PCC-1.',
      'Straight across, then the pairs between.',
    ],
    ['order circle of 5', 'Rule: star, common practice.', 'One left out at each step.'],
    ['order circle 9', 'Rule: star, common practice.', 'As straight across as there is a place.'],
    [
      'order row of 6',
      'Rule: row, common practice.',
      'From the middle outwards, one side and the other in turn.',
    ],
    [
      'order 2x5 by spiral',
      'Rule: spiral, common practice.',
      'Ring by ring from the middle outwards, each clockwise, the corners last.',
    ],
    [
      'order 1 2 / . 3',
      'Rule: outwards, common practice.',
      'From the middle outwards, always to the opposite side.',
    ],
    ['order circle 8 by clockwise', 'Rule: clockwise, common practice.', 'One after the other, clockwise.'],
  ])('%s', (line, rule, way) => {
    expect(textOf(line, nothing)).toEqual(expect.arrayContaining([rule, way]))
  })

  test('a rule that does not fit', () => {
    expect(textOf('order row 6 by star', nothing)).toEqual([
      'The rule star is not for a row.',
      'Here it goes "by row".',
    ])
  })

  test.each(['order 5x40', 'order circle 200', 'order row 40', 'order 2x10 by spiral'])(
    '%s fits the smallest screen',
    (line) => {
      for (const row of textOf(line, nothing)) expect(row.length).toBeLessThanOrEqual(76)
    },
  )
})

describe('the order of fasteners in the record', () => {
  test('as they are drawn', () => {
    expect(textOf('order valve cover bolts', bolts)[0]).toBe('2, 7, 3, 6, 1, 8, 4, 5')
    expect(textOf('order valve cover bolts', bolts)).not.toContainEqual(
      expect.stringContaining('names suggest'),
    )
  })

  test('as their names suggest, where nobody drew them', () => {
    expect(textOf('order head bolts', bolts)).toEqual(
      expect.arrayContaining([
        '4, 5, 3, 6, 2, 7, 1, 8',
        'Drawn as the names suggest; "layout p20: 2x4" draws how they lie.',
      ]),
    )
  })

  test('beside the order that was set, which holds', () => {
    const set = (order: string) =>
      textOf(
        'order valve cover bolts',
        told(...topEnd, 'layout valve cover bolts: 2x4', `tighten valve cover bolts: 10 Nm ${order}`),
      ).slice(-4, -2)
    const manual = "t1 (valve cover: valve cover bolts) goes by the manual's order, which holds."
    expect(set('order 2,7,3,6,1,8,4,5')).toEqual([manual, 'It is the order of this rule.'])
    expect(set('order 6,3,7,2,5,4,8,1')).toEqual([
      manual,
      'It is the order of this rule, begun elsewhere or going the other way.',
    ])
    expect(set('order 5,4,8,1,6,3,7,2')).toEqual([
      manual,
      'It is the order of this rule backwards, as for loosening.',
    ])
    expect(set('order 2,7,3,6,1,8,5,4')).toEqual([manual, 'At place 7 it has 5, rule crosswise has 4.'])
    expect(set('order 2,3,7,6,5,1,4,8')).toEqual([
      manual,
      'At place 2 it has 3, rule crosswise has 7; it follows rule spiral.',
    ])
    expect(set('by spiral')).toEqual([
      't1 (valve cover: valve cover bolts) goes by rule spiral, which holds.',
      'At place 2 it has 3, rule crosswise has 7; it follows rule spiral.',
    ])
  })

  test('a piece without positions', () => {
    expect(textOf('order valve cover', bolts)).toEqual([
      'Valve cover is one piece alone: there is nothing to tell it from.',
      'Positions are for matched sets and for fasteners that look alike.',
    ])
  })
})

function textOf(line: string, state: State): string[] {
  const reading = readLine(line, state)
  if (reading.kind !== 'ask' || reading.ask.ask !== 'sum') throw new Error(JSON.stringify(reading))
  return sumText(state, workOut(state, reading.ask.sum)).map(whole)
}

/** A row as it is shown, which ends where its words end. */
function whole(row: string): string {
  expect(row).toBe(row.trimEnd())
  return row
}
