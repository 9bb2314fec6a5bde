import { expect, test } from 'vitest'
import { factOf, partOf, recordOf, sectionOf, stepOf } from '../support/record-of.ts'
import { toldJob } from '../support/told-job.ts'

test('every reading stays in the record with its verdict, also where it was taken again', () => {
  const job = toldJob(
    'begin head off',
    'off cylinder head into bench',
    'Kim: measure flatness of head: 0.07 feeler 0.01, max 0.05 manual p. 4-12',
    'measure valve clearance I1..I2: 0.10 0.15 feeler 0.01 limits 0.13..0.17',
    'Ola: measure flatness of head: 0.03 feeler 0.01, max 0.05 manual p. 4-12',
    'measure valve clearance I1: 0.15 limits 0.13..0.17',
  )
  expect(partOf(stepOf(recordOf(job), 1), 'measured').map(factOf)).toEqual([
    'q1, flatness of head: 0.07; feeler 0.01; max 0.05, manual p. 4-12',
    '      0.07 mm, OUT: 0.02 mm over the limit of 0.05 mm',
    '      measured again since, as q3',
    'q2, valve clearance I1..I2: I1 0.10, I2 0.15; feeler 0.01; 0.13..0.17',
    '      I1 0.10 mm, OUT: 0.03 mm under the limit of 0.13 mm',
    '      I2 0.15 mm, in',
    '      measured again since: I1',
    'q3, flatness of head: 0.03; feeler 0.01; max 0.05, manual p. 4-12',
    '      0.03 mm, in',
    'q4, valve clearance I1: I1 0.15; 0.13..0.17',
    '      I1 0.15 mm, in',
    '      What does the instrument read to? It decides what is too close to call: measure again, with by N or feeler N.',
  ])
})

test('what was measured in no step has its own section', () => {
  const rows = recordOf(toldJob('measure flatness of head: 0.02 by 0.01 max 0.05'))
  expect(sectionOf(rows, 'MEASURED OUTSIDE EVERY STEP').map(factOf)).toEqual([
    'q1, flatness of head: 0.02; by 0.01; max 0.05',
    '    0.02 mm, in',
  ])
  expect(recordOf(toldJob('begin head off'))).not.toContain('MEASURED OUTSIDE EVERY STEP')
})
