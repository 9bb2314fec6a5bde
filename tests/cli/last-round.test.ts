import { expect, test } from 'vitest'
import { benchWithJob } from './support/bench.ts'

const home = [
  'begin cover off, does not hide',
  'off 2 M6x16 hex 8 cover bolts into new bag',
  'off 1 cover into new bag',
  'end',
  'take 1',
  'fit cover bolts',
  'fit cover',
  'done',
]

test('a last round is named before the first start, until it is in the job', () => {
  const { say } = benchWithJob(...home)
  expect(say('left').out).toBe(
    'Nothing is left over. Next: clear\nA last round comes before that, for what was ticked may still lie in its bag: "accept 1" adds it.\n',
  )
  expect(say('card').out).toContain(
    'Next: nothing is left over: clear; before that, accept 1, a last round\n',
  )
  expect(say('accept 1').code).toBe(0)
  say('take 2')
  say('count 1 = 0')
  say('count 2 = 0')
  expect(say('done').out).not.toContain('Not counted')
  expect(say('left').out).toBe('Nothing is left over. Next: clear\n')
  expect(say('card').out).toContain('Next: nothing is left over: clear\n')
})

test('a round that is closed says which bags nobody tipped out', () => {
  const { say } = benchWithJob(...home, 'accept 1', 'take 2', 'count 1 = 0')
  expect(say('done').out).toContain('Not counted on this round: bag 2.')
})
