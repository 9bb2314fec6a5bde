import { describe, expect, test } from 'vitest'
import { readComparison } from '../../src/lines/read-comparison.ts'
import { readLine } from '../../src/lines/read-line.ts'
import { told } from './told.ts'

const proposed = ['ports', 'bolt holes', 'length']

describe('what is said of a new piece beside the old one', () => {
  test.each([
    ['alike', { features: [], rest: 'alike' }],
    ['all alike', { features: [], rest: 'alike' }],
    ['rest alike keep old', { features: [], rest: 'alike', keep: true }],
    ['the rest alike, and keep the old one', { features: [], rest: 'alike', keep: true }],
    ['ports alike', { features: [{ feature: 'ports', how: 'alike' }] }],
    ['2 alike', { features: [{ feature: 'bolt holes', how: 'alike' }] }],
    [
      'Ports, 3 same',
      {
        features: [
          { feature: 'ports', how: 'alike' },
          { feature: 'length', how: 'alike' },
        ],
      },
    ],
    [
      'length differs 2 mm longer, rest alike',
      { features: [{ feature: 'length', how: 'differs', says: '2 mm longer' }], rest: 'alike' },
    ],
    ['colour is wrong', { features: [{ feature: 'colour', how: 'wrong' }] }],
    [
      'wrong, the flange is turned, and too thin',
      { features: [], rest: 'wrong', says: 'the flange is turned, and too thin' },
    ],
    ['wrong because too short', { features: [], rest: 'wrong', says: 'too short' }],
    ['9 alike', { features: [{ feature: '9', how: 'alike' }] }],
  ])('%s', (text, said) => {
    expect(JSON.parse(JSON.stringify(readComparison(text, proposed)))).toEqual(said)
  })

  test.each(['', 'keep old', 'the ports', 'ports, length'])('%j says nothing', (text) => {
    expect(readComparison(text, proposed)).toBeNull()
  })
})

const pump = told(
  'begin pump off',
  'off water pump into bench',
  'off 2 dowels into bench',
  'end',
  'new water pump instead',
)
const commands = (line: string) => readLine(line, pump)

describe('a line', () => {
  test('of one new piece, of several, or of what is due', () => {
    expect(commands('compare water pump: alike')).toMatchObject({
      commands: [{ do: 'compare', piece: 'p3', rest: 'alike' }],
    })
    expect(commands('compare p3, p2: alike keep old')).toMatchObject({
      commands: [
        { piece: 'p3', keep: true },
        { piece: 'p2', keep: true },
      ],
    })
    expect(commands('compare water pump')).toMatchObject({
      kind: 'ask',
      ask: { ask: 'compare', piece: 'p3' },
    })
    expect(commands('compare')).toMatchObject({ kind: 'ask', ask: { piece: null } })
    expect(commands('compare water pump: 1')).toMatchObject({ kind: 'misread' })
  })

  test('of sub-parts names only what can sit on a piece', () => {
    expect(commands('on water pump: 3 studs M6x25; seal ring, single-use')).toMatchObject({
      commands: [
        {
          do: 'carry',
          on: 'p3',
          items: [
            { kind: 'fastener', name: 'studs', count: 3, size: 'M6x25' },
            { kind: 'part', name: 'seal ring', singleUse: true },
          ],
        },
      ],
    })
    for (const wrong of ['oil out 2 L', '3 studs, 1 snapped', 'rag > port', 'note: so'])
      expect(commands(`on water pump: ${wrong}`)).toMatchObject({ kind: 'misread' })
  })

  test('of what goes over names both, or the pieces', () => {
    expect(commands('move over from old water pump to water pump')).toMatchObject({
      commands: [{ do: 'move-over', from: 'p1', to: 'p3' }],
    })
    expect(commands('move over dowels to p3')).toMatchObject({ commands: [{ to: 'p3', pieces: ['p2'] }] })
    expect(commands('move over to p3')).toMatchObject({ misreading: { code: 'missing' } })
    expect(commands('move over from p1')).toMatchObject({ misreading: { code: 'missing' } })
  })

  test('of a new one may call it by another name', () => {
    expect(commands('new 2 hollow dowels instead of dowels size 8x10')).toMatchObject({
      commands: [
        { do: 'supply', piece: 'p2', count: 2, instead: true, named: 'hollow dowels', size: '8x10' },
      ],
    })
  })
})
