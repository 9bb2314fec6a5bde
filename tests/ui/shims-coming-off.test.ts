import { expect, test } from 'vitest'
import { jobWith } from './support/bench.ts'

test('where things come off, a bag line of shims is what came off', () => {
  const { enter, desk, state } = jobWith('begin buckets and shims out')
  enter('.1', 'shims I1..I4')
  expect(desk.screen).toEqual({ at: 'off' })
  expect([...state().ledger.accounts.values()].map(({ home }) => home.position)).toEqual([
    'I1',
    'I2',
    'I3',
    'I4',
  ])
})

test('and a line with clearances is a sum there too', () => {
  const { type, rows, state, desk } = jobWith('begin buckets and shims out')
  const before = state().seq
  type('.1\rshims I1 0.20 2.40 wanted 0.13..0.17 bench 2.45\r')
  expect(desk.screen).toMatchObject({ at: 'sum' })
  expect(rows().join('\n')).toContain('1 of 1 out of range: 1 valve to touch, nothing to buy.')
  expect(rows().join('\n')).toContain('  I1     0.20 wide  2.40    0.13..0.17  2.45 from the bench  0.15')
  expect(state().seq).toBe(before)
})
