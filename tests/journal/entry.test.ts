import { describe, expect, test } from 'vitest'
import { ENTRY_VERSION, type Entry, parseEntry } from '../../src/journal/entry.ts'
import {
  addStep,
  aidIn,
  backBy,
  backOff,
  check,
  count,
  drain,
  drawn,
  endStrip,
  loosening,
  mark,
  matchedOff,
  move,
  off,
  replace,
  snug,
  strip,
  tightening,
  torque,
  turn,
  witness,
} from '../support/commands.ts'
import { openJob, record } from '../support/record.ts'

const { entries } = record([
  openJob,
  strip('cover off'),
  off(6, 'bolts', { size: 'M6x25', alikeAt: ['a', 'b', 'c', 'd', 'e', 'f'] }),
  off(2, 'studs', { broken: { kind: 'snapped', count: 1 } }),
  matchedOff(['I1', 'I2'], 'cap', { singleUse: true }),
  { do: 'open-container', kind: 'tray', slots: 4 },
  drain('oil'),
  mark('dot', 'p1'),
  aidIn('rag'),
  tightening('p1', [snug, torque(20), { kind: 'angle', degrees: 90, typed: '90 deg' }]),
  addStep('leaks', { way: 'after-start', due: 'hot' }),
  endStrip,
  move('p1', { kind: 'container', no: 4, slot: '2' }, { reason: 'to see them' }),
  replace('p2', 2),
  count(1, [null, 2]),
  { do: 'deal-labels', count: 24 },
  { do: 'void-labels', from: 5, to: 9, reason: 'sheet lost' },
  {
    do: 'add-pictures',
    pictures: [
      { file: 'lid.jpg', sha256: 'a'.repeat(64), taken: '2026-05-02T14:03:11', belongs: { container: 10 } },
      { file: 'bolts.jpg', sha256: 'b'.repeat(64), taken: null, belongs: null },
    ],
  },
  { do: 'sort-picture', picture: 'g2', belongs: 'none' },
  matchedOff(['E1', 'E2'], 'shim'),
  drawn('p1', 3, 'a', 'b', 'c', 'd', 'e', 'f'),
  {
    do: 'set-tightening',
    piece: 'p1',
    passes: [torque(20), backOff, backBy(90), { ...torque(20), round: true }, check(20), witness],
    by: 'crosswise',
    condition: 'oiled',
    because: 'it stretches',
  },
  {
    do: 'choose-wrench',
    tightening: 't1',
    wrench: {
      typed: '5-25',
      leastNewtonMetres: 5,
      mostNewtonMetres: 25,
      leverMm: 400,
      adapterMm: 0,
      angleDegrees: -90,
    },
  },
  loosening([backBy(90), backOff], ['2', '1']),
  turn(),
  {
    do: 'measure',
    name: 'deck',
    piece: 'p1',
    measurement: {
      kind: 'flatness-grid',
      readings: [
        { mm: 0, typed: '0', at: 'A', height: 'top', axis: 'x', role: 'bore', spanMm: 100 },
        { mm: -0.01, typed: '-0.01' },
      ],
      columns: 2,
      columnStepMm: 50,
      instrument: { resolutionMm: 0.01, typed: '0.01', kind: 'dial' },
      limits: { typed: 'max 0.05', mostMm: 0.05, source: 'p. 4-12' },
    },
  },
  { do: 'size', sizes: [{ piece: 'p1', size: 'M6x30' }] },
])
const entryOf = (type: Entry['type']) =>
  JSON.parse(JSON.stringify(entries.find((entry) => entry.type === type)))

function withPicture(more: object) {
  const entry = entryOf('pictures-added')
  return { ...entry, pictures: [{ ...entry.pictures[0], ...more }] }
}

function withReadings(readings: object[]) {
  const entry = entryOf('measured')
  return { ...entry, measure: { ...entry.measure, measurement: { ...entry.measure.measurement, readings } } }
}

describe('an entry reads back as it was written', () => {
  test.each(entries.map((entry) => [entry.type, entry] as const))('%s', (_, entry) => {
    expect(parseEntry(JSON.parse(JSON.stringify(entry)))).toEqual(entry)
  })
})

describe('what is no entry of ours is refused', () => {
  test.each<[string, unknown]>([
    ['nothing', null],
    ['a word', 'opened'],
    ['a list', []],
    ['no type', { v: 1, n: 1, at: '2030-01-01T08:00:00Z', id: 'e1' }],
    ['a type of another program', { ...entryOf('strip-ended'), type: 'sold' }],
    ['a type of JavaScript', { ...entryOf('strip-ended'), type: 'constructor' }],
    ['no number', { ...entryOf('strip-ended'), n: undefined }],
    ['number 0', { ...entryOf('strip-ended'), n: 0 }],
    ['version 0', { ...entryOf('strip-ended'), v: 0 }],
    ['no time', { ...entryOf('strip-ended'), at: '' }],
    ['a time of the clock on the wall', { ...entryOf('strip-ended'), at: '1 January, about 8' }],
    ['no id', { ...entryOf('strip-ended'), id: '' }],
    ['step 0', { ...entryOf('strip-ended'), step: 0 }],
    ['step 10000', { ...entryOf('strip-ended'), step: 10_000 }],
    ['something more', { ...entryOf('strip-ended'), colour: 'blue' }],
    ['a move of none', { ...entryOf('moved'), moves: [{ piece: 'p1', count: 0, from: 'bench', to: 'c1' }] }],
    ['no move', { ...entryOf('moved'), moves: [] }],
    [
      'a move to nowhere',
      { ...entryOf('moved'), moves: [{ piece: 'p1', count: 1, from: 'bench', to: 'garage' }] },
    ],
    [
      'a move of half a bolt',
      { ...entryOf('moved'), moves: [{ piece: 'p1', count: 0.5, from: 'bench', to: 'c1' }] },
    ],
    [
      'a move of a piece of no number',
      { ...entryOf('moved'), moves: [{ piece: 'bolt', count: 1, from: 'bench', to: 'c1' }] },
    ],
    [
      'a tray of no slots',
      { ...entryOf('container-opened'), container: { no: 1, kind: 'tray', slots: 0, inside: null } },
    ],
    ['a box', { ...entryOf('container-opened'), container: { no: 1, kind: 'box', inside: null } }],
    ['no litres', { ...entryOf('drained'), fluid: { ...entryOf('drained').fluid, litres: 0 } }],
    ['a text of 501', { ...entryOf('marked'), mark: { ...entryOf('marked').mark, text: 'x'.repeat(501) } }],
    [
      'no passes',
      { ...entryOf('tightening-set'), tightening: { ...entryOf('tightening-set').tightening, passes: [] } },
    ],
    [
      'a torque of none',
      {
        ...entryOf('tightening-set'),
        tightening: { ...entryOf('tightening-set').tightening, passes: [torque(0)] },
      },
    ],
    [
      'turned back by no angle',
      {
        ...entryOf('tightening-set'),
        tightening: { ...entryOf('tightening-set').tightening, passes: [torque(20), backBy(0)] },
      },
    ],
    ['a drawing of nothing', { ...entryOf('laid-out'), places: [] }],
    ['a drawing of no shape', { ...entryOf('laid-out'), shape: 'heap' }],
    [
      'a position without end',
      { ...entryOf('laid-out'), places: [{ position: 'a', x: Number.POSITIVE_INFINITY, y: 0 }] },
    ],
    [
      'an arrow to nowhere',
      { ...entryOf('laid-out'), places: [{ position: 'a', x: 0, y: 0, arrow: 'inwards' }] },
    ],
    ['no readings', withReadings([])],
    ['a reading that is no number', withReadings([{ mm: Number.NaN, typed: 'x' }])],
    ['no size', { ...entryOf('sized'), sizes: [] }],
    [
      'easing of nothing',
      { ...entryOf('loosening-set'), loosening: { ...entryOf('loosening-set').loosening, order: [] } },
    ],
    ['labels from 0', { ...entryOf('labels-dealt'), from: 0 }],
    ['labels to 10000', { ...entryOf('labels-dealt'), to: 10_000 }],
    ['no labels made void', { ...entryOf('labels-voided'), labels: [] }],
    ['no picture', { ...entryOf('pictures-added'), pictures: [] }],
    ['a picture of another folder', withPicture({ file: '../journal.jsonl' })],
    ['a picture of a hidden file', withPicture({ file: '.journal' })],
    ['a picture with a name of 121', withPicture({ file: 'x'.repeat(121) })],
    ['a picture without a checksum', withPicture({ sha256: '' })],
    ['a picture that shows a piece', withPicture({ belongs: { piece: 'p1' } })],
    ['a picture that shows two things', withPicture({ belongs: { container: 1, step: 1 } })],
    [
      'a measurement by steps beyond all measure',
      {
        ...entryOf('measured'),
        measure: {
          ...entryOf('measured').measure,
          measurement: {
            ...entryOf('measured').measure.measurement,
            instrument: { resolutionMm: 1e300, typed: '1e300' },
          },
        },
      },
    ],
    ['a count of minus one', { ...entryOf('counted'), lines: [{ piece: null, expected: 0, counted: -1 }] }],
    [
      'an override of anything',
      {
        ...entryOf('strip-ended'),
        type: 'overridden',
        step: undefined,
        target: 'the law',
        reason: 'x',
        gates: [],
      },
    ],
  ])('%s', (_, raw) => {
    expect(() => parseEntry(raw)).toThrow()
  })

  test('by a sentence that names an unknown type, cut to a length that fits', () => {
    expect(() => parseEntry({ type: 'x'.repeat(200) })).toThrow(
      `an entry of unknown type '${'x'.repeat(40)}'`,
    )
  })
})

test('who wrote it may be said', () => {
  expect(parseEntry({ ...entryOf('strip-ended'), by: 'the one with the lamp' })).toMatchObject({
    by: 'the one with the lamp',
  })
})

test('one of a newer version is not taken for one of ours, even in a shape that we know', () => {
  expect(() => parseEntry({ ...entryOf('strip-ended'), v: ENTRY_VERSION + 1 })).toThrow()
})

test('the version is the one that is written', () => {
  expect(entries.every(({ v }) => v === ENTRY_VERSION)).toBe(true)
})
