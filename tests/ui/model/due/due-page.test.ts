import { describe, expect, test } from 'vitest'
import { SMALLEST } from '../../../../src/ui/layout.ts'
import { headRows } from '../../../../src/ui/model/head.ts'
import { textOf } from '../../../../src/ui/text/line.ts'
import { jobWith, screens, shelfLater } from '../../support/bench.ts'

const apart = [
  'begin head off, does not hide',
  'off cylinder head into bench',
  'off cam caps I1..I4 into new bag',
  'off 6 M6x25 hex 8 cover bolts into new bag',
  'off water pump into bench',
  'end',
]

describe('what is due', () => {
  test('nothing, before anything is asked or awaited', () => {
    const { enter, rows } = jobWith(...apart)
    enter('.6')
    expect(rows()).toEqual([
      'WHAT IS DUE  0 things, 0 overdue',
      '     Nothing is to be checked, and nothing is awaited.',
    ])
  })

  test('each thing leads by its number to a page of its own', () => {
    const { enter, rows, desk } = jobWith(
      ...apart,
      'check cylinder head: look for cracks; measure flatness',
      'check cam caps: look for score',
      'judge water pump replace because the bearing is loose',
      'out cylinder head to the machine shop for skimming due 2030-01-20',
    )
    enter('.6')
    const shown = rows().map((row) => row.replace(/ +/g, ' ').trim())
    expect(shown).toEqual([
      'WHAT IS DUE 5 things, 0 overdue',
      'TO BE CHECKED',
      '1 ! NOT CHECKED cylinder head look for cracks; measure flatness',
      '2 ! NOT CHECKED 4 × cam caps look for score',
      '',
      'JUDGED, AND NOT DONE',
      '3 X NOT GOOD water pump to be replaced, because the bearing is loose',
      '',
      'OUT',
      '4 - OUT b1, 1 × cylinder head at the machine shop, due 20 Jan',
      '',
      'TO BUY AND ORDERED',
      '5 o TO BUY 1 line not ordered yet',
    ])
    const screens = [1, 2, 3, 4, 5].map((no) => {
      enter('.6', String(no))
      return desk.screen
    })
    expect(screens).toEqual([
      { at: 'judge', piece: 'p1' },
      { at: 'judge', piece: 'p2', ofSet: true },
      { at: 'judge', piece: 'p7' },
      { at: 'outing', outing: 'b1' },
      { at: 'buy' },
    ])
  })

  test('what is overdue stands first, the longest first, and on the card', () => {
    const { home } = jobWith(
      ...apart,
      'check water pump: look for play',
      'out cylinder head to the machine shop due in 5 days',
      'buy 6 cover bolts due in 2 days',
    )
    const { enter, rows, text, desk } = screens(shelfLater(home, 6))
    expect(text()).toContain(
      ' OVERDUE     o1, 6 × cover bolts M6x25 hex 8, due 17 Jan, 4 days late\n             b1, 1 × cylinder head at the machine shop, due 20 Jan, 1 day late',
    )
    enter('.6')
    expect(rows().join(' ').replace(/ +/g, ' ')).toMatch(
      /^WHAT IS DUE 3 things, 2 overdue OVERDUE 1 ! OVERDUE o1, 6 × cover bolts M6x25 hex 8 due 17 Jan, 4 days late 2 ! OVERDUE b1, 1 × cylinder head at the machine shop, due 20 Jan, 1 day late TO BE CHECKED/,
    )
    expect(desk.page().large?.letters).toBe('2 LATE')
  })

  test('a number past the last names nothing, and Enter claims nothing', () => {
    const { enter, entries, answer, desk } = jobWith(...apart, 'check cylinder head: look for cracks')
    const before = entries()
    enter('.6', '2')
    expect(answer()).toContain('Nothing has the number 2 here.')
    enter('')
    expect(entries()).toBe(before)
    expect(desk.screen).toEqual({ at: 'now' })
  })

  test('large letters say how much is late, else how much is due', () => {
    const { enter, desk } = jobWith(...apart, 'check cylinder head: look for cracks')
    enter('.6')
    expect(desk.page().large?.letters).toBe('1 DUE')
  })
})

test('the lists that a finding opens: a number begins the words of the finding', () => {
  const { enter, rows, line, state } = jobWith(...apart, 'when metal in the oil: replace water pump')
  enter('.6')
  expect(rows().map((row) => row.trim())).toEqual([
    'WHAT IS DUE  0 things, 0 overdue',
    'Nothing is to be checked, and nothing is awaited.',
    '',
    'WHAT A FINDING OPENS',
    '1  when metal in the oil  replace water pump',
  ])
  enter('1')
  expect(line()).toBe('finding metal in the oil|')
  enter('')
  expect(state().verdicts.size).toBe(1)
})

test('what sits on another piece is in the sum of what is off', () => {
  const { desk } = jobWith(...apart, 'on cylinder head: 3 studs M6x25')
  expect(textOf(headRows(desk.scene(), { at: 'now' })[0])).toContain('3 on others')
})

test('a piece that is to be cleaned stands there once, and not among the checks of its set', () => {
  const { enter, rows } = jobWith(
    ...apart,
    'check cylinder head, cam caps: look for score',
    'judge cylinder head clean because oily',
    'judge cam cap I2 machine because it is tight',
  )
  enter('.6')
  expect(rows().map((row) => row.replace(/ +/g, ' ').trim())).toEqual([
    'WHAT IS DUE 3 things, 0 overdue',
    'TO BE CHECKED',
    '1 ! NOT CHECKED 3 × cam caps look for score',
    '',
    'JUDGED, AND NOT DONE',
    '2 X NOT GOOD cylinder head to be cleaned and looked at again, because',
    'oily',
    '3 X NOT GOOD cam cap I2 to be machined, because it is tight',
  ])
})

test('a wrong one that went back does not come again, once the right one is here', () => {
  const { desk, enter } = jobWith(
    ...apart,
    'buy 1 water pump',
    'arrived o1',
    'send back o1 because it is for the other side',
  )
  const sum = () => textOf(headRows(desk.scene(), { at: 'now' })[0])
  expect(sum()).toContain('1 to come')
  enter('arrived o1')
  expect(sum()).not.toContain('to come')
})

describe('the card', () => {
  test('says how much is due in one row, and nothing where nothing is', () => {
    const { enter, text } = jobWith(...apart)
    enter('.')
    expect(text()).not.toContain('DUE')
    enter('check cylinder head: look for cracks; measure flatness', 'out water pump to the dealer', '.')
    expect(text()).toContain(' DUE         2 checks, 1 out: look with ".6"')
  })
})

describe('the names of the screens', () => {
  test.each([80, 73, 72, SMALLEST.width])('stand there whole on %i columns', (width) => {
    const { desk } = jobWith(...apart)
    desk.resize({ width, height: 24 })
    for (const screen of [{ at: 'now' }, { at: 'due' }, { at: 'buy' }] as const) {
      const names = textOf(headRows(desk.scene(), screen)[1])
      expect(names).toContain('.6 DUE')
      expect(names.length).toBeLessThanOrEqual(width)
      expect(names).toContain('. NOW')
    }
  })

  test('a page of what is due stands under DUE', () => {
    const { desk } = jobWith(...apart)
    const [, names] = headRows(desk.scene(), { at: 'outing', outing: 'b1' })
    expect(textOf(names)).toContain('[.6 DUE]')
  })
})
