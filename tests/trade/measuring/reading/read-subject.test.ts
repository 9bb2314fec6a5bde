import { expect, test } from 'vitest'
import { readSubject } from '../../../../src/trade/measuring/reading/read-subject.ts'

test.each([
  ['flatness of head', 'flatness', 'flatness of head', 'head', []],
  ['flatness', 'flatness', 'flatness', '', []],
  ['warpage of the head', 'flatness', 'warpage of the head', 'head', []],
  ['valve clearance I1..I4', 'valve-clearance', 'valve clearance I1..I4', '', ['I1', 'I2', 'I3', 'I4']],
  ['valve clearance I1', 'valve-clearance', 'valve clearance I1', '', ['I1']],
  ['valve clearances 1,2', 'valve-clearance', 'valve clearances 1,2', '', ['1', '2']],
  ['clearance of cam caps I1-I3', 'clearance', 'clearance of cam caps I1-I3', 'cam caps', ['I1', 'I2', 'I3']],
  ['oil clearance of mains 1..3', 'clearance', 'oil clearance of mains 1..3', 'mains', ['1', '2', '3']],
  ['ring gap of cylinder 1', 'clearance', 'ring gap of cylinder 1', 'cylinder 1', []],
  ['end float of crankshaft', 'clearance', 'end float of crankshaft', 'crankshaft', []],
  ['bore of cylinder 1', 'size', 'bore of cylinder 1', 'cylinder 1', []],
  ['journal of crankshaft', 'size', 'journal of crankshaft', 'crankshaft', []],
  [
    'free length of valve springs I1 I2',
    'length',
    'free length of valve springs I1 I2',
    'valve springs',
    ['I1', 'I2'],
  ],
  ['out of round of cylinder 1', 'out-of-round', 'out of round of cylinder 1', 'cylinder 1', []],
  ['taper of cylinder 1', 'taper', 'taper of cylinder 1', 'cylinder 1', []],
  ['stretch of rod bolts', 'stretch', 'stretch of rod bolts', 'rod bolts', []],
  ['runout of crankshaft', 'run-out', 'runout of crankshaft', 'crankshaft', []],
])('%s', (text, kind, name, of, positions) => {
  expect(readSubject(text)).toMatchObject({ understood: true, value: { kind, name, of, positions } })
})

test.each([
  ['flatness grid 3x4 of head', { rows: 3, columns: 4 }],
  ['flatness of head grid 3 x 4', { rows: 3, columns: 4 }],
  ['flatness grid 3x4 every 50 mm of head', { rows: 3, columns: 4, columnStepMm: 50, rowStepMm: 50 }],
  ['flatness grid 2x5 every 2 x 3 in of head', { rows: 2, columns: 5, columnStepMm: 50.8, rowStepMm: 76.2 }],
])('%s', (text, grid) => {
  expect(readSubject(text)).toMatchObject({
    understood: true,
    value: { kind: 'flatness-grid', name: 'flatness of head', of: 'head', positions: [], grid },
  })
})

test.each([
  ['', 'empty', 'flatness of head'],
  ['head', 'what', 'size of head'],
  ['colour of head', 'what', 'size of head'],
  ['flatness grid of head', 'grid', 'flatness grid 3x4'],
  ['flatness grid 1x4 of head', 'grid', 'flatness grid 3x4'],
  ['flatness grid 20x20 of head', 'grid', 'flatness grid 3x4'],
  ['flatness grid 3x4 every 0 mm of head', 'grid', 'flatness grid 3x4'],
  ['bore grid 3x4 of cylinder 1', 'grid', 'flatness grid 3x4'],
])('%s is not understood', (text, code, nearest) => {
  expect(readSubject(text)).toMatchObject({ understood: false, code, nearest })
  expect(readSubject(nearest).understood).toBe(true)
})

test.each([
  ['valve clearance I1..I4', 'valve clearance'],
  ['Valve clearance I2', 'valve clearance'],
  ['clearance of cam caps I1..I4', 'clearance of cam caps'],
  ['bore of cylinder 1', 'bore of cylinder 1'],
  ['flatness', 'flatness'],
])('%s is, whatever the position, %s', (text, base) => {
  expect(readSubject(text)).toMatchObject({ understood: true, value: { base } })
})
