import { describe, expect, test } from 'vitest'
import type { State } from '../../../src/journal/state.ts'
import { findVerb, readLine } from '../../../src/lines/read-line.ts'
import { told, topEnd } from '../told.ts'

// The day of these jobs is 1 January 2030, a Tuesday.

const twoSizes = ['off 6 M6x20 pump cover bolts into bench', 'lost 1 pump cover bolt because it fell']
const state = told(...topEnd, ...twoSizes, 'want 2 tubes grease at 4.50 USD', 'want gasket paper')
const bench = { kind: 'place', place: 'bench' }

const read = (line: string, from: State = state): unknown => {
  const reading = readLine(line, from)
  if (reading.kind === 'commands') return reading.commands
  return reading.kind === 'misread' ? reading.misreading : reading
}
const id = (name: string) =>
  [...state.ledger.accounts.values()].find(({ piece }) => piece.name === name)?.piece.id

const headBolts = { piece: id('head bolts'), name: 'head bolts M10x140 E14', count: 8 }
const gasket = { piece: id('head gasket'), name: 'head gasket', count: 1 }

describe('what is bought', () => {
  test('by the numbers of the list', () => {
    expect(read('buy 1, 2 from corner shop due Friday')).toMatchObject([
      {
        do: 'line-orders',
        ordered: true,
        lines: [
          { ...headBolts, source: 'corner shop', due: '2030-01-04' },
          { ...gasket, source: 'corner shop', due: '2030-01-04' },
        ],
      },
    ])
  })

  test('all of it: what was only wanted is ordered now', () => {
    const commands = read('buy all due in 2 weeks') as { do: string; lines?: unknown[]; order?: string }[]
    expect(commands.map((command) => command.order ?? command.lines?.length)).toEqual([5, 'o1', 'o2'])
    expect(commands.slice(1)).toMatchObject([
      { do: 'change-order', order: 'o1', ordered: true, due: '2030-01-15' },
      { do: 'change-order', order: 'o2', ordered: true, due: '2030-01-15' },
    ])
  })

  test.each<[string, object]>([
    ['buy head bolts', headBolts],
    ['buy 10 head bolts', { ...headBolts, count: 10 }],
    ['buy 2 head gaskets', { ...gasket, count: 2 }],
    // Of what is not short, as many as belong there.
    ['buy valve cover bolts', { piece: id('valve cover bolts'), count: 8 }],
    ['buy cylinder head', { piece: id('cylinder head'), count: 1 }],
    ['buy shim E2', { count: 1, name: expect.stringMatching(/E2$/) }],
    ['buy 1 shim E3 size 2.55 at 6.50 EUR', { size: '2.55', name: expect.stringMatching(/E3 2\.55$/) }],
    ['buy 8 head bolts at 3.20 EUR each size M10x145', { size: 'M10x145', price: { minor: 320 } }],
    ['buy coolant', { name: 'coolant', unit: 'L', count: 2.1 }],
    ['buy 5 L coolant', { name: 'coolant', unit: 'L', count: 5 }],
    [
      'buy head gasket at 18,40 EUR no 11-204 from shop at the corner',
      {
        ...gasket,
        price: { minor: 1840, currency: 'EUR', typed: '18,40 EUR' },
        partNo: '11-204',
        source: 'shop at the corner',
      },
    ],
    [
      'buy head bolts no AB 12, at $3.20 each',
      { partNo: 'AB 12', price: { minor: 320, currency: '$', typed: '$3.20' } },
    ],
    [
      'buy head bolts at 25.60 in all due 2030-02-01',
      { price: { minor: 2560, currency: '', typed: '25.60', inAll: true }, due: '2030-02-01' },
    ],
  ])('%s', (line, wanted) => {
    expect(read(line)).toMatchObject([{ do: 'line-orders', ordered: true, lines: [wanted] }])
  })

  test.each<[string, object]>([
    ['buy o1', { do: 'change-order', order: 'o1', ordered: true }],
    ['buy o1 10 at 4.20 USD', { order: 'o1', count: 10, price: { minor: 420, currency: 'USD' } }],
    ['buy grease', { order: 'o1', ordered: true }],
    ['buy 3 tubes grease', { order: 'o1', ordered: true, count: 3 }],
  ])('%s orders a line that was wanted', (line, command) => {
    expect(read(line)).toMatchObject([command])
  })

  test.each<[string, object]>([
    ['buy', { code: 'missing', what: 'N' }],
    ['buy 99', { code: 'no-such-want', part: '99' }],
    ['buy 1,2 at 3.20', { code: 'not-understood', part: '3.20' }],
    ['buy o1 many', { code: 'no-such-piece' }],
    ['buy 3 tubes of moon dust', { code: 'no-such-piece' }],
    ['buy head gasket due 31 Nov', { code: 'no-such-day', lastDay: 30 }],
    [
      'buy head gasket due 4/12',
      { code: 'two-ways', ways: ['buy head gasket due 4 Dec', 'buy head gasket due 12 Apr'] },
    ],
    ['part head gasket', { code: 'missing' }],
    ['part head gasket no 12 due Friday', { code: 'not-understood' }],
  ])('%s is not understood', (line, misreading) => {
    expect(read(line)).toMatchObject(misreading)
  })
})

describe('what is wanted besides, and what is known about a part', () => {
  test.each<[string, object]>([
    ['want 2 tubes grease', { count: 2, unit: 'tubes', name: 'grease' }],
    ['want 5 litres of oil', { count: 5, unit: 'L', name: 'oil' }],
    ['want 0,5 kg rags', { count: 0.5, unit: 'kg', name: 'rags' }],
    ['want gasket paper from corner shop', { count: 1, name: 'gasket paper', source: 'corner shop' }],
    ['want 3 copper washers', { count: 3, name: 'copper washers' }],
  ])('%s', (line, wanted) => {
    expect(read(line)).toMatchObject([{ do: 'line-orders', ordered: false, lines: [wanted] }])
  })

  test('part', () => {
    expect(read('part head gasket at 18.40 EUR each, no 11-204, from corner shop')).toMatchObject([
      {
        do: 'note-part',
        piece: gasket.piece,
        partNo: '11-204',
        source: 'corner shop',
        price: { minor: 1840 },
      },
    ])
  })
})

describe('what arrives', () => {
  const open = told(
    ...topEnd,
    'buy 8 head bolts',
    'buy 4 head bolts',
    'buy head gasket',
    'want 2 tubes grease',
  )

  test.each<[string, object[]]>([
    ['arrived o1', [{ do: 'receive', order: 'o1', into: bench }]],
    ['arrived o1 6 into new bag', [{ order: 'o1', count: 6, into: { kind: 'new', container: 'bag' } }]],
    ['arrived o1 10 spare 2', [{ order: 'o1', count: 10, spare: 2 }]],
    ['arrived o1 size M10x145', [{ order: 'o1', size: 'M10x145' }]],
    ['arrived head gasket into 3', [{ order: 'o3', into: { kind: 'container', no: 3 } }]],
    ['arrived head bolts', [{ order: 'o1' }, { order: 'o2' }]],
    [
      'arrived 10 head bolts',
      [
        { order: 'o1', count: 8 },
        { order: 'o2', count: 2 },
      ],
    ],
    ['arrived head bolts 3', [{ order: 'o1', count: 3 }]],
    // What is too many is said of the last line, which refuses it.
    [
      'arrived 13 head bolts',
      [
        { order: 'o1', count: 8 },
        { order: 'o2', count: 5 },
      ],
    ],
    ['arrived 2 tubes grease', [{ order: 'o4', count: 2 }]],
    ['arrived all', [{ order: 'o1' }, { order: 'o2' }, { order: 'o3' }]],
  ])('%s', (line, commands) => {
    expect(read(line, open)).toMatchObject(commands)
    expect(read(line, open)).toHaveLength(commands.length)
  })

  test.each<[string, object]>([
    [
      'arrived cylinder head',
      { code: 'no-such-order', part: 'cylinder head', open: ['o1', 'o2', 'o3', 'o4'] },
    ],
    ['arrived head', { code: 'no-such-order', part: 'head' }],
    ['arrived o1 some', { code: 'no-such-order' }],
    ['arrived o4 into 3', { code: 'not-understood', part: 'into', nearest: 'arrived o4' }],
    ['arrived grease into new bag', { code: 'not-understood', nearest: 'arrived o4' }],
    ['cancel o1', { code: 'reason-missing' }],
    ['cancel cylinder head because so', { code: 'no-such-order' }],
    ['send back o1', { code: 'reason-missing' }],
    ['kit top end', { code: 'missing', what: 'NAME:' }],
    ['kit top end:', { code: 'missing' }],
  ])('%s is not understood', (line, misreading) => {
    expect(read(line, open)).toMatchObject(misreading)
  })

  test('cancelled, by its number or by what it is', () => {
    expect(read('cancel o2 because enough', open)).toMatchObject([{ order: 'o2', cancelled: 'enough' }])
    expect(read('cancel grease because enough', open)).toMatchObject([{ order: 'o4', cancelled: 'enough' }])
  })

  test('sent back: by the newest line of which some is here, else by a move to the supplier', () => {
    const here = told(...topEnd, 'buy 8 head bolts', 'arrived o1', 'new head gasket')
    expect(read('send back 2 head bolts because too short', here)).toEqual([
      { do: 'return-order', order: 'o1', count: 2, reason: 'too short' },
    ])
    expect(read('send back head gasket because torn', here)).toMatchObject([
      { do: 'move', into: { kind: 'place', place: 'supplier' }, reason: 'torn' },
    ])
  })

  test('sent back: by the line that brought the piece, and where the words name several by the one that is wrong', () => {
    const first = told(...topEnd, 'buy 1 cylinder head', 'arrived o1')
    const [wrong] = [...first.comparisons.keys()]
    const here = told(
      ...topEnd,
      'buy 1 cylinder head',
      'arrived o1',
      `compare ${wrong}: ports wrong one is missing`,
      'buy 1 cylinder head',
      'arrived o2',
    )
    const right = [...here.comparisons.keys()].at(-1)
    const back = (order: string) => [{ do: 'return-order', order, count: undefined, reason: 'so' }]
    expect(read(`send back ${wrong} because so`, here)).toEqual(back('o1'))
    expect(read('send back cylinder head because so', here)).toEqual(back('o1'))
    expect(read(`send back ${right} because so`, here)).toEqual(back('o2'))
    // The old one was never ordered: it goes by itself, and the new one stays.
    const old = [...here.comparisons.values()][0]?.old
    expect(read(`send back ${old} because so`, here)).toMatchObject([{ do: 'move', piece: old }])
  })

  test('a kit, thing by thing', () => {
    expect(
      read('kit top end: 1 head gasket, two head bolts; 4x shims and O-rings into new bag'),
    ).toMatchObject([
      {
        do: 'count-in',
        name: 'top end',
        into: { kind: 'new', container: 'bag' },
        order: undefined,
        lines: [
          { name: 'head gasket', count: 1, pieces: [gasket.piece] },
          { name: 'head bolts', count: 2, pieces: [headBolts.piece] },
          { name: 'shims', count: 4, pieces: expect.arrayContaining([expect.any(String)]) },
          { name: 'O-rings', count: 1, pieces: [] },
        ],
      },
    ])
  })

  test('what may begin the name of a thing that comes off is no verb by itself', () => {
    expect(findVerb('kit box')).toBeNull()
    expect(findVerb('part carrier')).toBeNull()
    expect(findVerb('kit top end: 1 head gasket')?.word).toBe('kit')
    expect(findVerb('part head gasket no 12')?.word).toBe('part')
  })

  test('a kit that was ordered under its name is that order', () => {
    const kit = told(...topEnd, 'want 1 top end kit', 'buy o1')
    expect(read('kit top end kit: 1 head gasket', kit)).toMatchObject([{ order: 'o1' }])
  })
})
