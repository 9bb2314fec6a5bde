import { describe, expect, test } from 'vitest'
import { readBagLine } from '../../../src/trade/bag-line/read-bag-line.ts'

const metric = { units: 'metric' as const }

describe('what is not understood, and the nearest form that is', () => {
  test.each([
    ['', 'empty', '', '8 M6x25 hex 10 valve cover bolts'],
    [' ; ;', 'empty', '', '8 M6x25 hex 10 valve cover bolts'],
    // Counts.
    ['0 bolts', 'count', '0', 'missing: 1 bolt'],
    ['-3 bolts', 'count', '-3', '3 bolts'],
    ['2.5 bolts', 'count', '2.5', '2 bolts'],
    ['1,5 bolts', 'count', '1,5', '1 bolt'],
    ['10000 bolts', 'count', '10000', '9999 bolts'],
    ['99999999999999999999 bolts', 'count', '99999999999999999999', '9999 bolts'],
    ['7 of 5 bolts', 'count', '7 of 5', '5 of 7 bolts'],
    ['0 of 0 bolts', 'count', '0 of 0', '1 bolt'],
    ['7 of', 'count', '7 of', '7 of 8 bolts'],
    ['7 of 8 bolts, 2 missing', 'count', '2 missing', '7 of 8 bolts'],
    ['9 bolts, 10 missing', 'count', '10 missing', '9 bolts, 9 missing'],
    ['8 bolts, 9 snapped', 'count', '9 snapped', '8 bolts, 8 snapped'],
    ['missing: 1 bolt, 1 snapped', 'count', '1 snapped', 'missing: 1 bolt'],
    ['snapped: tank > rail', 'kind', 'snapped:', 'note: snapped: tank > rail'],
    ['8 bolts, snapped', 'count', 'snapped', '8 bolts, 1 snapped'],
    ['8 bolts, 1 snapped, 1 stripped', 'count', '1 stripped', '8 bolts, 1 snapped'],
    ['8 M6x25 bolts, 4 M6x30 bolts', 'count', '4 M6x30 bolts', '8 M6x25 bolts; 4 M6x30 bolts'],
    ['8 bolts, 4 washers', 'count', '4 washers', '8 bolts; 4 washers'],
    ['2 hoses: tank > rail', 'count', '2', 'hose: tank > rail'],
    ['tools: 0 magnets', 'count', '0', 'tools: 1 magnet'],
    ['0 rags > inlet ports', 'count', '0', '1 rag > inlet ports'],
    // Threads and drives.
    ['M6x', 'thread', 'M6x', 'M6x25'],
    ['8 M6x hex 10 bolts', 'thread', 'M6x', '8 M6x25 hex 10 bolts'],
    ['8 M6 x bolts', 'thread', 'M6 x', '8 M6x25 bolts'],
    ['M13x20 bolt', 'thread', 'M13x20', 'M12x20 bolt'],
    ['3/8 bolts', 'thread', '3/8', '3/8-16 bolts'],
    ['2 M10 bolts M8', 'thread', 'M8', '2 M10 bolts'],
    ['8 M6x25 bolts 4 M6x30 bolts', 'thread', 'M6x30', '8 M6x25 bolts; 4 M6x30 bolts'],
    ['hex', 'drive', 'hex', 'hex 10'],
    ['8 M6x25 hex valve cover bolts', 'drive', 'hex', '8 M6x25 hex 10 valve cover bolts'],
    ['8 M6x25 torx bolts', 'drive', 'torx', '8 M6x25 T30 bolts'],
    ['8 M6x25 hex 5000 bolts', 'drive', 'hex 5000', '8 M6x25 hex 10 bolts'],
    ['8 M8x45 class 10.8 hex 13 bolts', 'class', 'class 10.8', '8 M8x45 10.9 hex 13 bolts'],
    ['8 grade 9.9 bolts', 'class', 'grade 9.9', '8 9.8 bolts'],
    // Positions.
    ['6 cam caps I1..I4', 'positions', 'I1..I4', '4 cam caps I1..I4'],
    ['cam caps I1..I40000', 'positions', 'I1..I40000', 'cam caps I1..I200'],
    ['cam caps I1..E4', 'positions', 'I1..E4', 'cam caps I1..I4'],
    ['shims I1,I2,I1', 'positions', 'I1,I2,I1', 'shims I1,I2'],
    ['8 bolts @1..7', 'positions', '@1..7', '7 bolts @1..7'],
    ['8 bolts @1..8, 1 missing @9', 'positions', '1 missing @9', '8 bolts @1..8, 1 missing'],
    ['3 rags > inlet ports 1..2', 'positions', '1..2', '2 rags > inlet ports 1..2'],
    // Fluids.
    ['coolant out', 'volume', 'coolant out', 'coolant out 2.1 L'],
    ['coolant out lots', 'volume', 'coolant out lots', 'coolant out 2.1 L'],
    ['coolant out -2 L', 'volume', '-2 L', 'coolant out 2.1 L'],
    ['oil out 3 qt', 'volume', '3 qt', 'oil out 3 US qt'],
    ['oil out 3 qt from sump', 'volume', '3 qt from sump', 'oil out 3 US qt'],
    ['drained coolant', 'volume', 'drained coolant', 'coolant out 2.1 L'],
    ['2.1 L coolant', 'kind', '2.1 L coolant', 'coolant out 2.1 L'],
    // A torque belongs to a tightening.
    ['8 M6x25 bolts 10 Nm', 'torque', '10 Nm', '8 M6x25 bolts'],
    ['8 M6x25 bolts, 16 ft-lb', 'torque', '16 ft-lb', '8 M6x25 bolts'],
    // Ends, places, texts.
    ['fuel hose:', 'ends', 'fuel hose', 'fuel hose: tank > rail'],
    ['hose: a > b > c', 'ends', 'a > b > c', 'hose: a > b'],
    [
      'hose: one end to carb, the other to pump',
      'ends',
      'one end to carb, the other to pump',
      'hose: one end > carb, the other',
    ],
    ['cable: lever > lever', 'ends', 'lever > lever', 'cable: lever > rail'],
    ['rag', 'where', 'rag', 'rag > inlet port 1'],
    ['plug >', 'where', 'plug', 'plug > inlet port 1'],
    ['> inlet port', 'where', '> inlet port', 'rag > inlet port'],
    ['note:', 'text', 'note:', 'note: gasket stuck'],
    ['mark I3:', 'text', 'mark I3:', 'mark I3: arrow to chain'],
    ['tool:', 'text', 'tool:', 'tool: torque wrench'],
    ['missing:', 'text', 'missing:', 'missing: 1 M6x20 cover bolt'],
    ['took', 'minutes', 'took', 'took 25 min'],
    ['took 25', 'minutes', 'took 25', 'took 25 min'],
    ['took -5 min', 'minutes', 'took -5 min', 'took 5 min'],
    ['took 0 min', 'minutes', 'took 0 min', 'took 25 min'],
    ['took 8 M6x25 bolts', 'minutes', 'took 8 M6x25 bolts', '8 M6x25 bolts'],
    // Words of no kind.
    ['8', 'kind', '8', '8 bolts'],
    ['!!!', 'kind', '!!!', '8 M6x25 hex 10 valve cover bolts'],
    ['mark dot up', 'kind', 'mark', 'mark: dot up'],
    ['valve cover: 8 M6x25 bolts', 'kind', 'valve cover:', '8 M6x25 valve cover bolts'],
    ['oddly: said', 'kind', 'oddly:', 'note: oddly: said'],
    // One fault among several items: the others stay as they are.
    ['3 bolts; 0 nuts; gasket, new', 'count', '0', '3 bolts; missing: 1 nut; gasket, new'],
  ])('%j: %s', (line, code, part, nearest) => {
    expect(readBagLine(line, metric)).toEqual({ understood: false, code, part, nearest })
    expect(readBagLine(nearest, metric)).toMatchObject({ understood: true })
  })
})
