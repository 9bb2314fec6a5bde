import { expect, test } from 'vitest'
import { readLine } from '../../../src/lines/read-line.ts'
import { measureReading } from '../../../src/ui/model/measure-reading.ts'
import { textOf } from '../../../src/ui/text/line.ts'
import { nothing } from '../../lines/told.ts'
import { jobWith } from '../support/bench.ts'

const out = 'q1 flatness of head: 0.07 mm, OUT'
const told = [
  'begin head off',
  'off cylinder head into bench',
  'end',
  'measure flatness of head: 0.07 feeler 0.01 max 0.05 in step 1',
]

test('the step shows what was measured, and the way back what is out', () => {
  const { enter, rows } = jobWith(...told)
  enter('step 1')
  expect(rows().join('\n')).toMatch(/MEASURED/)
  expect(rows().join('\n')).toContain(out)
  enter('.3')
  expect(rows().join('\n')).toContain(out)
})

test('the verdict is there while the readings are typed', () => {
  const reading = readLine('measure valve clearance I1..I2: 0.12 0.15 feeler 0.01 limits 0.13..0.17', nothing)
  const [command] = reading.kind === 'commands' ? reading.commands : []
  if (command?.do !== 'measure') throw new Error('not understood')
  expect(measureReading(command).map(textOf)).toEqual([
    'valve clearance I1..I2: 1 OUT and 1 in; I1 0.12 mm, OUT: 0.01 mm under the limit of 0.13 mm',
    'Worked out, not a specification: the service manual decides.',
  ])
})
