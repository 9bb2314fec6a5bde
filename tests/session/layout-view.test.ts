import { describe, expect, test } from 'vitest'
import { layoutView } from '../../src/session/layout-view.ts'
import { positionCells } from '../../src/session/position-cells.ts'
import { benchWithJob } from '../cli/support/bench.ts'

const lots = [
  'begin pump off',
  'off 4 M6x25 hex 10 pump bolts @1..4 into new bag',
  'off 2 M6x110 hex 10 pump bolts @5,6 into new bag',
]

function view(...lines: string[]) {
  return layoutView(benchWithJob(...lines).session().state, 'p1')
}

const says = (cells: ReturnType<typeof positionCells>) =>
  [...cells].map(([position, { says: text }]) => `${position} ${text}`)

describe('what a drawing of a pattern shows', () => {
  test('sizes where there are several, shortened as far as they stay apart', () => {
    expect(says(positionCells(view(...lots), 'belongs', String))).toEqual([
      '1 M6x25',
      '2 M6x25',
      '3 M6x25',
      '4 M6x25',
      '5 M6x110',
      '6 M6x110',
    ])
    expect(says(positionCells(view(...lots.slice(0, 2)), 'belongs', String))).toEqual([])
    const heads = [
      'begin pump off',
      'off 1 M6x25 hex 10 pump bolt @1 into new bag',
      'off 1 M6x25 allen 5 pump bolt @2 into new bag',
    ]
    expect(says(positionCells(view(...heads), 'belongs', String))).toEqual([
      expect.stringMatching(/^1 M6x25 .*10/),
      expect.stringMatching(/^2 M6x25 .*5/),
    ])
  })

  test('where each lies; of look-alikes in two places nobody knows which', () => {
    const { lies } = view(...lots, 'move 1 M6x25 pump bolts from bag 1 to bench')
    expect(lies).toEqual(
      new Map([
        ['5', 'c2'],
        ['6', 'c2'],
      ]),
    )
  })

  test('the order of the tightening that turns just these', () => {
    expect(view(...lots).order).toEqual([])
    const set = view(...lots.slice(0, 2), 'end', 'tighten pump bolts: 8 Nm order 2,4,1,3')
    expect(set.order).toEqual(['2', '4', '1', '3'])
    expect(says(positionCells(set, 'order', String))).toEqual(['2 (1)', '4 (2)', '1 (3)', '3 (4)'])
  })
})
