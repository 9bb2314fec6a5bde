import { expect, test } from 'vitest'
import { bench, benchWithJob } from './support/bench.ts'

// All figures are invented.

test('a limit that is said with a check holds for what is measured, whatever was said with the reading', () => {
  const { say, told } = benchWithJob()
  told(
    'begin shaft out',
    'off shaft into bench',
    'end',
    'check shaft: measure run-out at most 0.05, length min 76,5',
  )
  expect(say('ok k1').err).toContain('"measure run-out of p1: ..."')
  told('measure length of shaft: 76.8')
  const out = say('measure run-out of shaft: 0.09 by 0.01')
  expect(out.out).toContain('k1, measure run-out at most 0.05 and length min 76,5: out')
  const refused = say('ok k1')
  expect(refused.code).toBe(1)
  expect(refused.err).toContain('0.04 mm over the limit of 0.05 mm')
  told('measure run-out of shaft: 0.02 by 0.01, max 0.10', 'ok k1')
})

test('in a job in inches a limit without a unit is asked about', () => {
  const { say, told } = bench()
  say('new', 'job', 'Inches', '--units', 'us')
  told('begin shaft out', 'off shaft into bench', 'end')
  const { code, err } = say('check shaft: measure run-out at most 0.002')
  expect(code).toBe(2)
  expect(err).toContain('check shaft: measure run-out at most 0.002 in')
  told('check shaft: measure run-out at most 0.002 in')
})
