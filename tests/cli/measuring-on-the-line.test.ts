import { expect, test } from 'vitest'
import { benchWithJob } from './support/bench.ts'

const head = ['begin head off', 'off cylinder head into bench']

test('readings are recorded, and their verdict is said at once', () => {
  const { say } = benchWithJob(...head)
  const { out, code } = say('measure flatness of head: 0.02 0.07 feeler 0.01, max 0.05 manual p. 4-12')
  expect(code).toBe(0)
  expect(out).toContain('q1 measured, flatness of head: 0.02, 0.07; feeler 0.01; max 0.05, manual p. 4-12')
  expect(out).toContain('q1 flatness of head: 0.07 mm, OUT: 0.02 mm over the limit of 0.05 mm')
  expect(out).toContain('The service manual decides.')
})

test('what is out is shown wherever its step is, until it is measured again; nothing waits for it', () => {
  const { say } = benchWithJob(
    ...head,
    'end',
    'measure flatness of head: 0.07 feeler 0.01, max 0.05 in step 1',
  )
  expect(say('back').out).toContain('q1 flatness of head: 0.07 mm, OUT')
  expect(say('step 1').out).toMatch(/Measured:\n {2}q1 flatness of head: 0\.07 mm, OUT/)
  say('look 1')
  expect(say('take 1').code).toBe(0)
  say('measure flatness of head: 0.03 feeler 0.01, max 0.05')
  expect(say('back').out).not.toContain('OUT')
  expect(say('step 1').out).toContain('q2 flatness of head: 0.03 mm, in')
})

test('the verdict is data with --json', () => {
  const { say } = benchWithJob(...head)
  const { heeds } = JSON.parse(say('--json', 'measure flatness of head: 0.07 feeler 0.01, max 0.05').out)
  expect(heeds).toMatchObject([{ heed: 'measured', measured: { judged: { verdict: 'out' } } }])
})

test('what a measurement lacks is asked', () => {
  const { say } = benchWithJob(...head)
  expect(say('measure flatness of head: 0.02').out).toContain('No limit was given, so there is no verdict')
  expect(say('measure flatness of head: 0.02 max 0.05').out).toContain('What does the instrument read to?')
})

test('the question gives rows, and with --json the numbers', () => {
  const { say } = benchWithJob(
    ...head,
    'measure valve clearance I1..I2: 0.12 0.15 feeler 0.01 limits 0.13..0.17',
  )
  expect(say('measures').out).toContain('I1 0.12 mm, OUT: 0.01 mm under the limit of 0.13 mm')
  const { answer } = JSON.parse(say('measures', '--json').out)
  expect(answer.worked[0].judged.results[0]).toMatchObject({
    at: 'I1',
    mm: 0.12,
    highMm: 0.13,
    verdict: 'out',
  })
})
