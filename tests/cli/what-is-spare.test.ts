import { expect, test } from 'vitest'
import { benchWithJob } from './support/bench.ts'

const pumpOff = ['begin pump off', 'off 2 O-rings 12x2, single-use', 'off pump', 'end']

test('a ring that a kit held too many is known at the last gate, and what another number of it means', () => {
  const { say, told } = benchWithJob()
  told(...pumpOff, 'kit gasket kit: 3 O-rings, 2 copper washers', 'compare O-rings: alike')
  const spares = [
    'Known to be spare: 1 × O-rings 12x2 and 2 × copper washers.',
    'Count them: one more belongs on the machine, "found O-rings 12x2" shows where; one fewer is in it somewhere, or lost.',
  ]
  expect(say('left').out).toContain(`left over:\n`)
  expect(say('left').out).toContain(`${spares.join('\n')}\n`)
  told('take 1', 'fit O-rings', 'fit pump', 'done')
  expect(say('left').out).toMatch(
    new RegExp(`^Nothing is left over. Next: clear\n.*\n${spares.join('\n')}\n$`),
  )
  expect(say('clear').out).toContain(spares.join(' '))
  const found = say('found O-rings 12x2').out
  expect(found).toContain('1 should be among the spares')
  expect(found).toContain('See whether it is among the spares.')
})

test('a job without spares says nothing of them', () => {
  const { say, told } = benchWithJob()
  told('begin cover off', 'off 2 M6x20 cover bolts', 'end', 'look 1', 'take 1', 'fit cover bolts', 'done')
  expect(say('left').out).not.toContain('spare')
  expect(say('clear').out).not.toContain('spare')
})

test('more new ones than belong are asked about, with the sum', () => {
  const { say, told } = benchWithJob()
  told(...pumpOff)
  expect(say('new 2 O-rings').out).not.toContain('too many')
  expect(say('new 1 O-rings').out).toContain(
    '3 O-rings 12x2 are here and 2 belong on the machine: 1 too many; "undo" if that was a slip, else "spare 1 p3".',
  )
  told('compare O-rings: alike')
  // The words to type for the new ones keep to what belongs.
  const refused = say('fit p1')
  expect(refused.code).toBe(1)
  expect(refused.err).not.toContain('fit 3')
  told('spare 1 p3', 'take 1', 'fit p3')
})

test('an order of what other new ones have taken the place of brings too many', () => {
  const { say, told } = benchWithJob()
  told(...pumpOff, 'buy 2 O-rings', 'new 2 O-rings')
  expect(say('arrived o1').out).toContain('4 O-rings 12x2 are here and 2 belong on the machine: 2 too many')
})
