import { expect, test } from 'vitest'
import { readInstrument } from '../../../../src/trade/measuring/reading/read-instrument.ts'

test.each([
  ['by 0.01', 0.01, undefined],
  ['by 0,01', 0.01, undefined],
  ['feeler 0.01', 0.01, 'feeler'],
  ['feelers by 0.02 mm', 0.02, 'feeler'],
  ['by 0.01 feeler', 0.01, 'feeler'],
  ['with a feeler gauge 0.05', 0.05, 'feeler'],
  ['0.02 dial', 0.02, 'dial'],
  ['dial indicator by 0.0005 in', 0.0127, 'dial'],
  ['by 0.0001 in micrometer', 0.00254, 'micrometer'],
  ['caliper 0.05', 0.05, 'caliper'],
  ['bore gauge 0.01', 0.01, 'bore-gauge'],
  ['plastic strip by 0.025', 0.025, 'plastic-strip'],
  ['by 0.5 thou', 0.0127, undefined],
])('%s', (typed, resolutionMm, kind) => {
  const read = readInstrument(typed)
  expect(read).toMatchObject({ understood: true, value: { instrument: { resolutionMm, typed } } })
  expect(read.understood && read.value.instrument.kind).toBe(kind)
})

test.each([
  ['feeler', 'feeler by 0.01'],
  ['with a bore gauge', 'bore gauge by 0.01'],
  ['by 0', 'by 0.01'],
  ['by 5', 'by 0.01'],
  ['by eye', 'by 0.01'],
])('%s does not say what it reads to', (typed, nearest) => {
  expect(readInstrument(typed)).toEqual({ understood: false, code: 'resolution', part: typed, nearest })
  expect(readInstrument(nearest).understood).toBe(true)
})
