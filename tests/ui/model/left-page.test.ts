import { expect, test } from 'vitest'
import { textOf } from '../../../src/ui/text/line.ts'
import { jobWith } from '../support/bench.ts'

const pumpOff = ['begin pump off, does not hide', 'off 2 O-rings 12x2, single-use into bench', 'end']
const kit = 'kit gasket kit: 3 O-rings, 2 copper washers'

test('what is known to be spare stands under what is left over, and beside the last gate', () => {
  const { enter, rows } = jobWith(...pumpOff, kit, 'compare O-rings: alike')
  enter('.4')
  const shown = () => rows().map((row) => row.trim())
  expect(shown()).toContain('SPARE')
  expect(shown().join(' ')).toContain('Known to be spare: 1 × O-rings 12x2 and 2 × copper washers.')
  enter('take 1', 'fit O-rings', 'done', '.4')
  expect(shown()).toContain('THE NEXT GATE')
  expect(shown().join(' ')).toContain('Known to be spare: 1 × O-rings 12x2 and 2 × copper washers.')
})

test('where there are none, nothing is said of spares', () => {
  const { enter, rows } = jobWith(...pumpOff)
  enter('.4')
  expect(rows().map((row) => row.trim())).not.toContain('SPARE')
})

test('hundreds have two rows each, made when they are shown, and a number of three digits leads to one', () => {
  const { enter, desk } = jobWith(
    'begin head off',
    'off tappets A1..A125 into bench; shims B1..B125 into bench',
    'end',
  )
  enter('.4')
  const { rows } = desk.page()
  expect(rows.length).toBe(502)
  expect(textOf(rows.at(498))).toMatch(/^250 {2}.*shim B125/)
  expect(rows.at(498)).not.toBe(rows.at(498))
  enter('205')
  expect(desk.screen.at).toBe('step')
})

test('of a job in which nothing was recorded it says nothing of the machine', () => {
  const { enter, rows, answer, entries } = jobWith()
  enter('.4')
  expect(rows()).toEqual([
    'WHAT IS LEFT OVER   = NOTHING TO DO ',
    '     Nothing has come off yet in this job.',
  ])
  const before = entries()
  enter('1')
  expect(answer()).toContain('Nothing has the number 1 here.')
  expect(entries()).toBe(before)
})

test('what comes off again after the first start is left over like any other, until it is home', () => {
  const { enter, rows, desk, state } = jobWith(
    'begin cover off, does not hide',
    'off 2 M6x16 cover bolts into new bag',
    'end',
    'take 1',
    'fit cover bolts',
    'done',
    'clear',
    'started',
    'begin lid off, does not hide',
    'off 2 nuts into new bag',
  )
  enter('.')
  expect(rows().join('\n')).toContain('go on with step 2, lid off')
  enter('end', '.4')
  expect(rows()[0]).toMatch(/NOT CLEAR .* 2 since the first start$/)
  expect(desk.page().large?.letters).toBe('2 LEFT')
  enter('.')
  expect(rows().join('\n')).toContain('take up step 2, lid')
  enter('take 2', 'fit nuts', 'done', '.4')
  expect(rows()[0]).toContain('✓ CLEAR')
  enter('3')
  expect(state().closed).toBe(true)
})

test('beside the first gate a last round is offered by number, until it is in the job', () => {
  const { enter, rows, state } = jobWith(
    'begin cover off, does not hide',
    'off 2 M6x16 cover bolts into new bag',
    'end',
    'take 1',
    'fit cover bolts',
    'done',
  )
  enter('.4')
  const round = '  4  before that, a last round: what was ticked may still lie in its bag'
  expect(rows()).toContain(round)
  enter('4')
  expect(state().steps.get(2)).toMatchObject({ way: 'build', due: 'last', built: 'open' })
  enter('take 2', 'count 1 = 0', 'done', '.4')
  expect(rows()).toContain('  1  clear it for the first start')
  expect(rows()).not.toContain(round)
})
