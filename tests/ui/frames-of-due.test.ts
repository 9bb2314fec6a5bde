import { describe, expect, test } from 'vitest'
import { SMALLEST } from '../../src/ui/layout.ts'
import type { Screen } from '../../src/ui/navigation.ts'
import { frameRows } from '../../src/ui/screens/frame.tsx'
import { textOf, widthOf } from '../../src/ui/text/line.ts'
import { jobWith, screens, shelfLater } from './support/bench.ts'

const job = [
  'begin head off, does not hide',
  'off cylinder head into bench',
  'off cam caps I1..I4 into new bag',
  'off 8 M10x120 E14 head bolts, single-use into new bag',
  'off water pump into bench',
  'off 2.1 L coolant out',
  'end',
  'on water pump: 3 studs M6x25',
  'check cylinder head: look for cracks; measure flatness',
  'check cam caps: look for score',
  'judge water pump replace because the bearing is loose',
  'when metal in the oil: check cam caps: look for score',
  'new water pump',
  'out cylinder head to the machine shop for skimming due in 5 days expect flat within 0.05',
  'lost 1 cam cap I2 because it rolled away',
  'buy 8 head bolts from the dealer at 3.20 EUR due in 2 days',
]

/** The keys that lead to each page, by what it is. */
const ways: readonly (readonly [string, Screen['at'], ...string[]])[] = [
  ['what is due', 'due', '.6'],
  ['a check', 'judge', '.6', '3'],
  ['a set that is checked', 'judge', '.6', '4'],
  ['a comparison', 'compare', '.6', '5'],
  ['what is wrong', 'compare', '.6', '5', '11'],
  ['what is to buy', 'buy', '.6', '6'],
  ['a parcel', 'arrivals', '.6', '7'],
  ['an order', 'order', '.6', '1'],
  ['an outing', 'outing', '.6', '2'],
]

/** The job some days after it was told, when the head and the bolts are late. */
function late(size: { width: number; height: number }) {
  const { home } = jobWith(...job)
  const bench = screens(shelfLater(home, 6), size)
  const frame = () => frameRows(bench.desk, size).rows.map((row) => textOf(row).trimEnd())
  return { ...bench, frame }
}

describe('a terminal of 80 by 24 without colour', () => {
  test('has what is late, checked, compared and bought at one glance', () => {
    const { enter, frame } = late({ width: 80, height: 24 })
    enter('.6')
    expect(`\n${frame().join('\n').trimEnd()}`).toBe(`
blue twin 001  waiting  hands free                                        off 18
 . NOW   .1 OFF   .2 LIES   .3 BACK   .4 LEFT   .5 LOG  [.6 DUE]         ? help
─ WHAT IS DUE  7 things, 2 overdue ─────────────────────────────────────────────
OVERDUE
  1   ! OVERDUE       o1, 8 × head bolts M10x120 E14  due 17 Jan, 4 days late
  2   ! OVERDUE       b1, 1 × cylinder head  at the machine shop, due 20 Jan, 1
                      day late

TO BE CHECKED
  3   ! NOT CHECKED   cylinder head  look for cracks; measure flatness
  4   ! NOT CHECKED   4 × cam caps  look for score

NEW BESIDE OLD
  5   ! NOT COMPARED  water pump  p9, the old one is p7

TO BUY AND ORDERED
  6   o TO BUY        2 lines not ordered yet
  7  a parcel is here: tick what is in it

─ Enter where you are ────────────────────────────────────────────── + 8 below ─
 >


 Next see what blocks step 1, head           ? all keys   0 takes back   * large`)
  })

  test('has the new piece beside the old one on one page, with all its answers', () => {
    const { enter, frame } = late({ width: 80, height: 24 })
    enter('compare water pump')
    expect(frame().join('\n')).toContain('something is wrong')
  })
})

describe.each(ways)('%s', (_, at, ...keys) => {
  test.each([{ width: 80, height: 24 }, SMALLEST, { width: 132, height: 50 }])(
    'keeps within $width by $height',
    (size) => {
      const { desk, enter, frame } = late(size)
      enter(...keys)
      expect(desk.screen.at).toBe(at)
      const rows = frame()
      expect(rows).toHaveLength(size.height)
      for (const row of rows) expect(widthOf(row)).toBeLessThanOrEqual(size.width)
    },
  )

  test('Enter alone records nothing', () => {
    const { enter, entries } = late({ width: 80, height: 24 })
    enter(...keys)
    const before = entries()
    enter('')
    expect(entries()).toBe(before)
  })
})
