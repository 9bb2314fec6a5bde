import { expect, test } from 'vitest'
import { jobWith } from '../../support/bench.ts'

test('what is missing or broken stands with what is due, each with its ways out', () => {
  const { enter, rows, desk } = jobWith(
    'begin exhaust off, does not hide',
    'off 4 M8 studs, 1 snapped',
    'off 8 M6x25 shield bolts',
    'lost 1 shield bolts because it rolled away',
    'end',
  )
  enter('.6')
  const all = rows().map((row) => row.trimEnd())
  const own = all.slice(all.indexOf('MISSING AND BROKEN'))
  // What is to be bought for them stands before, and has numbers too.
  expect(own.map((row) => row.replace(/^ +\d+ {3}/, '  N   '))).toEqual([
    'MISSING AND BROKEN',
    '  N   ! MISSING       studs M8  1 short, 1 in scrap and x1, 1 × stud M8 snapped',
    '     · "new 1 p1" when here, or "leave off 1 p1 because ...".',
    '     · Get out what is left of it, then "settle x1: ..." with how, or "override',
    '       x1 because ..." if it may stay so.',
    '  N   ! MISSING       shield bolts M6x25  1 short and 1 lost',
    '     · "move 1 p2 from lost to bench" when found, "new 1 p2" when here, or',
    '       "leave off 1 p2 because ...".',
    '     · "accept lost p2 because ..." when nobody looks any more.',
  ])
  const [no = ''] = own.flatMap((row) => /^ +(\d+) .*shield bolts/.exec(row)?.[1] ?? [])
  enter(no)
  expect(desk.screen).toEqual({ at: 'step', step: 1 })
})
