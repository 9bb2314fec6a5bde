import { expect, test } from 'vitest'
import { readBagLine } from '../../../src/trade/bag-line/read-bag-line.ts'
import { bagReading } from '../../../src/ui/model/bag-reading.ts'
import { textOf } from '../../../src/ui/text/line.ts'

test.each([
  [
    '8 M6x25 hex 10 valve cover bolts',
    ['8 × valve cover bolts · M6, pitch 1 assumed, length 25 mm · hex 10 · fastener'],
  ],
  [
    '6 M8x45 8.8 hex 13 mount bolts',
    ['6 × mount bolts · M8, pitch 1.25 assumed, length 45 mm · class 8.8 · hex 13 · fastener'],
  ],
  ['2 3/8-16 grade 5 bolts', ['2 × bolts · 3/8, pitch 16 per inch · grade 5 · fastener']],
  ['7 of 8 cover screws', ['7 × cover screws · 1 of 8 missing · fastener']],
  ['cam caps I1..I3', ['3 × cam caps · each to its own home: I1 I2 I3 · part']],
  ['fuel hose: tank > rail', ['fuel hose · ends: tank – rail']],
  ['rag > inlet port 1', ['1 × rag · into the machine at inlet port 1 · must come out']],
  ['coolant out 2.1 L', ['coolant out · 2.1 L · to be filled again']],
  ['mark I3: arrow to chain', ['mark on I3 · arrow to chain · to be seen again']],
  ['note: gasket stuck', ['note · gasket stuck']],
  ['took 25 min', ['25 min']],
])('%s', (line, rows) => {
  const bag = readBagLine(line, { units: 'metric' })
  if (!bag.understood) throw new Error(`not understood: ${bag.part}`)
  expect(bagReading(bag).map(textOf)).toEqual(rows)
})

test('what a line leaves open is asked under it', () => {
  const bag = readBagLine('cover gasket', { units: 'metric' })
  if (!bag.understood) throw new Error('not understood')
  expect(bagReading(bag).map(textOf)[1]).toMatch(/^\? .*single-use/)
})
