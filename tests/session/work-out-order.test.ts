import { describe, expect, test } from 'vitest'
import type { State } from '../../src/journal/state.ts'
import { readLine } from '../../src/lines/read-line.ts'
import { workOut } from '../../src/session/work-out.ts'
import { told, topEnd } from '../lines/told.ts'

const drawn = [...topEnd, 'layout valve cover bolts: 2x4']

describe('the order of a rule, as facts', () => {
  test('of a pattern in the record', () => {
    expect(workedOut('order valve cover bolts', told(...drawn))).toMatchObject({
      isFound: true,
      rule: 'crosswise',
      source: 'common-practice',
      others: ['spiral', 'clockwise'],
      order: ['2', '7', '3', '6', '1', '8', '4', '5'],
      loosening: ['5', '4', '8', '1', '6', '3', '7', '2'],
      isProposed: false,
      set: [],
    })
  })

  test('of positions that nobody drew, in a row as their names suggest', () => {
    expect(workedOut('order cam caps', told(...topEnd))).toMatchObject({
      isFound: true,
      rule: 'row',
      order: ['I2', 'I3', 'I1', 'I4'],
      isProposed: true,
    })
  })

  test('every position is drawn with its turn', () => {
    const worked = workedOut('order 3x4', told())
    if (!worked.isFound) throw new Error(worked.fault.code)
    const drawing = worked.drawing.join('\n')
    for (const [index, position] of worked.order.entries()) {
      expect(drawing).toMatch(new RegExp(`(?<!\\S)${position} #${index + 1}(?!\\S)`))
    }
  })

  test('beside the order of the names, which is none of the manual', () => {
    const worked = workedOut('order head bolts', told(...topEnd, 'tighten head bolts: 20 Nm'))
    expect(worked).toMatchObject({
      set: [
        {
          tightening: 't1',
          orderBy: null,
          difference: { code: 'different', at: 1, manual: '1', ruled: '4' },
        },
      ],
    })
  })

  test('drawn only after the order was set, it is compared all the same', () => {
    const state = told(
      ...topEnd,
      'tighten valve cover bolts: 10 Nm order 2,3,7,6,5,1,4,8',
      'layout valve cover bolts: 2x4',
    )
    expect(workedOut('order valve cover bolts by spiral', state)).toMatchObject({
      set: [{ tightening: 't1', orderBy: 'manual', difference: { code: 'same' } }],
    })
  })
})

describe('no order', () => {
  test('of a single piece', () => {
    expect(workedOut('order valve cover', told(...topEnd))).toMatchObject({
      isFound: false,
      fault: { code: 'pattern-single' },
    })
  })

  test('by a rule that does not fit the shape', () => {
    expect(workedOut('order circle 8 by spiral', told())).toEqual({
      isFound: false,
      fault: { code: 'rule-not-for-shape', rule: 'spiral', shape: 'circle', others: ['star', 'clockwise'] },
    })
  })
})

function workedOut(line: string, state: State) {
  const reading = readLine(line, state)
  if (reading.kind !== 'ask' || reading.ask.ask !== 'sum') throw new Error(JSON.stringify(reading))
  const worked = workOut(state, reading.ask.sum)
  if (worked.sum !== 'order') throw new Error(worked.sum)
  return worked.worked
}
