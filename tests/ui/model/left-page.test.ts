import { expect, test } from 'vitest'
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
