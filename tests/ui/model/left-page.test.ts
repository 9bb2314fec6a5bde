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
