import { expect, test } from 'vitest'
import { benchWithJob } from './support/bench.ts'

const pump = [
  'begin pump off',
  'off water pump into new bag',
  'on water pump: 3 studs M6x25',
  'end',
  'check water pump: look for play',
  'judge water pump replace because the bearing is loose',
  'buy 1 water pump',
  'arrived o1',
  'compare p3: wrong, inlet to the left',
  'send back p3 because it is for the other side',
]

test('a wrong one that went back is only waited for', () => {
  const { say, told } = benchWithJob(...pump)
  expect(say('due').out).toBe('TO BUY AND ORDERED:\n  o1  1 × water pump, 1 sent back, 1 to come\n')
  const reasons = say('take 1').err.split('\n')
  expect(reasons.filter((row) => row.startsWith('  '))).toEqual([
    '  1 × water pump is at a supplier: "arrived o1" when the right one is here.',
  ])
  expect(say('checks').out).not.toContain('NOT GOOD')
  const { answer } = JSON.parse(say('--json', 'due').out)
  expect(answer).toMatchObject({ comparisons: [], checks: [], judged: [] })
  told('arrived o1')
  expect(JSON.parse(say('--json', 'due').out).answer.comparisons).toMatchObject([{ piece: 'p4', old: 'p1' }])
})

test('what sits on the old one goes over to the one that has the home now', () => {
  const { say, told } = benchWithJob(...pump)
  expect(say('left').out).toContain('Over to the new one when that is here.')
  told('arrived o1')
  expect(say('left').out).toContain('"move over from p1 to p4"')
  expect(say('scrap p1 because it is worn').err).toContain('Move over first: "move over from p1 to p4"')
  told('compare p4: alike keep old')
  expect(say('left').out).toContain('way: first "move over from p1 to p4", then "scrap p1" or "spare p1".')
  told('move over from old water pump to water pump')
  expect(say('left').out).toContain('Put it out of the way: "scrap p1" or "spare p1".')
})
