import { describe, expect, test } from 'vitest'
import { readLine } from '../../../src/lines/read-line.ts'
import { told, topEnd } from '../told.ts'

// The day of these jobs is 1 January 2030, a Tuesday.

const state = told(...topEnd)
const gone = told(...topEnd, 'out cylinder head, 2 exhaust studs to Miller', 'out cam caps to the grinder')

const read = (line: string, from = state) => {
  const reading = readLine(line, from)
  if (reading.kind === 'commands') return reading.commands
  return reading.kind === 'misread' ? [reading.misreading] : [reading]
}
const id = (words: string) => {
  const [found] = read(`scrap ${words}`)
  return found && 'piece' in found ? found.piece : undefined
}
const head = id('cylinder head')
const studs = id('exhaust studs')
const bench = { kind: 'place', place: 'bench' }

describe('out', () => {
  test.each<[string, object]>([
    ['out cylinder head to Miller', { to: 'Miller', pieces: [{ piece: head }] }],
    [
      'out cylinder head, 2 exhaust studs to Miller',
      { pieces: [{ piece: head }, { piece: studs, count: 2 }] },
    ],
    ['out cylinder head and exhaust studs to Miller', { pieces: [{ piece: head }, { piece: studs }] }],
    [
      'out cylinder head to the machine shop for skimming and pressure test due Friday',
      { to: 'the machine shop', why: 'skimming and pressure test', due: '2030-01-04' },
    ],
    [
      'out cylinder head to Miller, for skimming, due 12 Jan, expect flat within 0.05 for all of it, without cam caps',
      { to: 'Miller', why: 'skimming', due: '2030-01-12', expects: 'flat within 0.05 for all of it' },
    ],
    [
      'out cylinder head to Miller expect no scratch due in 2 weeks',
      { expects: 'no scratch', due: '2030-01-15' },
    ],
    [
      'out cylinder head to Miller expect a face without scratches',
      { expects: 'a face without scratches', aside: undefined },
    ],
    ['out cylinder head to Miller for cracks due to heat', { why: 'cracks due to heat', due: undefined }],
    ['out cylinder head to Miller because it is warped', { why: 'it is warped' }],
  ])('%s', (line, command) => {
    expect(read(line)).toMatchObject([{ do: 'send-out', ...command }])
  })

  test('a whole set goes by its name, and some of it by positions', () => {
    const set = read('out cam caps to Miller')[0]
    expect(set && 'pieces' in set ? set.pieces : []).toHaveLength(4)
    const two = read('out cam caps I1, I2 to Miller')[0]
    expect(two && 'pieces' in two ? two.pieces : []).toHaveLength(2)
  })

  test('without a word to whom it is a plain move, as it always was', () => {
    expect(read('out cylinder head because it is warped')).toMatchObject([
      { do: 'move', piece: head, into: { place: 'out' }, reason: 'it is warped' },
    ])
    expect(read('out 2 exhaust studs from bag 5')).toMatchObject([{ do: 'move', piece: studs, count: 2 }])
  })

  test.each<[string, object]>([
    ['out cylinder head to Miller due soon', { code: 'date', part: 'soon' }],
    ['out cylinder head to Miller due 31 Apr', { code: 'no-such-day', month: 4, lastDay: 30 }],
    ['out cylinder head to Miller due 4/12', { code: 'two-ways', part: '4/12' }],
    ['out cylinder head to Miller due yesterday', { code: 'date', fault: 'past' }],
    ['out cylinder head to bench', { code: 'not-understood', nearest: 'move cylinder head to bench' }],
    ['out flywheel to Miller', { code: 'no-such-piece', part: 'flywheel' }],
    ['out cylinder head to', { code: 'missing', what: 'to WHOM' }],
    ['out cylinder head to for skimming', { code: 'missing', what: 'to WHOM' }],
    ['out hose to Miller', { kind: 'which-piece' }],
  ])('%s: asked', (line, asked) => {
    expect(read(line)).toMatchObject([asked])
  })
})

describe('came back', () => {
  test.each<[string, object[]]>([
    ['came back b1', [{ outing: 'b1', into: bench }]],
    ['came back b1 into new bag', [{ outing: 'b1', into: { kind: 'new', container: 'bag' } }]],
    ['came back cylinder head', [{ outing: 'b1', pieces: [{ piece: head }] }]],
    ['came back 1 exhaust stud into bag 5', [{ outing: 'b1', pieces: [{ piece: studs, count: 1 }] }]],
    ['came back cylinder head, cam caps I1', [{ outing: 'b1' }, { outing: 'b2' }]],
    ['came back b1: skimmed by 0.1 mm', [{ outing: 'b1', result: 'skimmed by 0.1 mm' }]],
    ['came back b1: took out nothing', [{ tookOut: { text: 'nothing', items: [] } }]],
    [
      'came back b1: skimmed by 0.1 mm; took out 2 gallery plugs M8 back, 4 guides not back',
      [
        {
          result: 'skimmed by 0.1 mm',
          tookOut: {
            items: [
              { name: 'gallery plugs', count: 2, back: true, size: 'M8' },
              { name: 'guides', count: 4, back: false },
            ],
          },
        },
      ],
    ],
  ])('%s', (line, commands) => {
    expect(read(line, gone)).toMatchObject(commands.map((command) => ({ do: 'come-back', ...command })))
  })

  test('what went out without a word to whom comes back by a move', () => {
    const out = told(...topEnd, 'out cylinder head because it is warped')
    expect(read('came back cylinder head', out)).toMatchObject([
      { do: 'move', piece: head, from: 'out', into: bench },
    ])
  })

  test('what is not out at all is asked for all the same, and refused with who has what', () => {
    expect(read('came back cylinder head')).toMatchObject([{ do: 'come-back', pieces: [{ piece: head }] }])
  })
})

describe('took out', () => {
  test.each<[string, object]>([
    ['took out b1: nothing', { text: 'nothing', items: [] }],
    ['took out: nothing', { text: 'nothing' }],
    ['took out cylinder head: nothing', { text: 'nothing' }],
    [
      'took out b1: 2 gallery plugs and 4 guides back',
      {
        items: [
          { name: 'gallery plugs', count: 2, back: true },
          { name: 'guides', count: 4, back: true },
        ],
      },
    ],
    ['took out b1: 4 guides still there', { items: [{ name: 'guides', count: 4, back: false }] }],
    ['took out b1: dowel not back', { items: [{ name: 'dowel', count: 1, back: false }] }],
    [
      'took out b1: 2 plugs from cylinder head back',
      { items: [{ name: 'plugs', count: 2, back: true, from: head }] },
    ],
    ['took out b1: M8x16 plug back', { items: [{ name: 'plug', size: 'M8x16', count: 1 }] }],
  ])('%s', (line, tookOut) => {
    const back = told(...topEnd, 'out cylinder head, 2 exhaust studs to Miller', 'came back b1')
    expect(read(line, back)).toMatchObject([{ do: 'come-back', outing: 'b1', pieces: [], tookOut }])
  })

  test.each<[string, object]>([
    ['took out b1: 2 gallery plugs', { code: 'missing', what: 'back or not back' }],
    ['took out b1', { code: 'missing', what: 'WHAT' }],
    ['took out: nothing', { code: 'missing', what: 'b1' }],
  ])('%s: asked', (line, asked) => {
    expect(read(line, gone)).toMatchObject([asked])
  })
})

describe('borrow', () => {
  test.each<[string, object]>([
    [
      'borrow 2 valve cover bolts from job 12',
      { count: 2, words: 'valve cover bolts', job: 12, instead: false },
    ],
    ['borrow cylinder head from job 3', { count: 1, words: 'cylinder head', piece: head }],
    [
      'borrow 3 M6x20 bolts from job 3 for exhaust studs into bag 5',
      { count: 3, words: 'M6x20 bolts', piece: studs, into: { kind: 'container', no: 5 } },
    ],
    ['borrow 1 cylinder head from job 3 instead', { instead: true }],
  ])('%s', (line, errand) => {
    expect(read(line)).toMatchObject([{ kind: 'errand', errand: { errand: 'borrow', ...errand } }])
  })

  test.each<[string, object]>([
    ['borrow 2 valve cover bolts', { code: 'missing', what: 'from job N' }],
    ['borrow 2 M12 nuts from job 3', { code: 'missing', what: 'for PIECE' }],
    ['borrow 2 M12 nuts from job 3 for flywheel', { code: 'no-such-piece', part: 'flywheel' }],
  ])('%s: asked', (line, asked) => {
    expect(read(line)).toMatchObject([asked])
  })
})
