import { describe, expect, test } from 'vitest'
import { readLine } from '../../../src/lines/read-line.ts'
import { nothing, told, topEnd } from '../told.ts'

// Lines about joints: their drawings, how they are eased and tightened, and turns by hand.
const state = told(
  ...topEnd,
  'off 5 M6x25 hex 8 pump cover bolts @1..3,5,6 into bench',
  'off 1 M6x40 hex 8 pump cover bolt @4 into bench',
  'layout cam caps: 2x2',
  'tighten valve cover bolts: 10 Nm',
  'loosen cap bolts row 4: 1/2 turn, free order 4,1,3,2',
)
const short = [...state.ledger.accounts.values()].find(({ piece }) => piece.name === 'pump cover bolts')
  ?.piece.id
const long = [...state.ledger.accounts.values()].find(({ piece }) => piece.name === 'pump cover bolt')?.piece
  .id

function command(line: string): unknown {
  const reading = readLine(line, state)
  if (reading.kind !== 'commands') throw new Error(`${line}: ${JSON.stringify(reading)}`)
  return reading.commands[0]
}

describe('a drawing', () => {
  const of = (line: string) => {
    const { layout, ...more } = command(line) as { layout: { shape: string; places: { position: string }[] } }
    return { ...more, shape: layout.shape, drawn: layout.places.map(({ position }) => position).join(' ') }
  }
  test.each([
    [
      'layout valve cover bolts: 2x4',
      { do: 'lay-out', piece: 'p1', shape: 'grid', drawn: '1 2 3 4 5 6 7 8' },
    ],
    ['draw valve cover bolts: circle', { shape: 'circle', drawn: '1 2 3 4 5 6 7 8' }],
    ['layout cam caps: row', { piece: 'p9', shape: 'row', drawn: 'I1 I2 I3 I4' }],
    ['layout cam caps: I4 I3 / . I2 I1 arrow left', { shape: 'free', drawn: 'I4 I3 I2 I1', arrow: 'left' }],
    ['layout cam caps: arrows up', { shape: 'grid', drawn: 'I1 I2 I3 I4', arrow: 'up' }],
    ['layout pump cover bolts: 1 2 3 / 6 5 4', { piece: short, drawn: '1 2 3 6 5 4' }],
    // What is missing or twice is said where it is decided.
    ['layout cam caps: I1 I2 / I3 I3', { shape: 'free', drawn: 'I1 I2 I3 I3' }],
  ])('%s', (line, expected) => {
    expect(of(line)).toMatchObject(expected)
  })

  test('without a form is the question how they lie', () => {
    expect(readLine('layout cam caps', state)).toMatchObject({
      kind: 'ask',
      ask: { ask: 'layout', piece: 'p9' },
    })
  })

  test.each([
    ['arrow cam caps left', { do: 'point', piece: 'p9', positions: ['I1', 'I2', 'I3', 'I4'], arrow: 'left' }],
    ['arrow cam caps: I3 up', { do: 'point', piece: 'p9', positions: ['I3'], arrow: 'up' }],
    ['arrow cam caps: I1..I3 down', { positions: ['I1', 'I2', 'I3'], arrow: 'down' }],
    ['arrow cam cap I3 RIGHT', { piece: 'p11', positions: ['I3'], arrow: 'right' }],
    ['arrow valve cover bolts left', { piece: 'p1', positions: [] }],
  ])('%s', (line, expected) => {
    expect(command(line)).toMatchObject(expected)
  })
})

describe('easing', () => {
  test.each([
    [
      'loosen head bolts 2x4: 1/4 turn, 1/2 turn, free',
      {
        do: 'set-loosening',
        passes: [
          { kind: 'back-off', degrees: 90 },
          { kind: 'back-off', degrees: 180 },
          { kind: 'back-off', typed: 'free' },
        ],
        order: ['5', '4', '8', '1', '6', '3', '7', '2'],
      },
    ],
    ['ease sump bolts row 4: 90 deg, free', { name: 'sump bolts', order: ['4', '1', '3', '2'] }],
    [
      'loosen flange bolts circle 6 in 3 steps',
      { passes: [{ typed: 'ease, step 1' }, { typed: 'ease, step 2' }, { typed: 'free' }] },
    ],
    ['loosen sump bolts row 3: free order 1,3,2', { order: ['1', '3', '2'] }],
    [
      'loosen stud nuts A1,A2,B1,B2 2x2: free',
      { name: 'stud nuts', order: expect.arrayContaining(['A1', 'B2']) },
    ],
    // Those of the record need no form: their drawing is known, or they go as they are named, in reverse.
    ['loosen cam caps: free', { name: 'cam caps', layout: { shape: 'grid' } }],
    ['loosen valve cover bolts: free', { order: ['8', '7', '6', '5', '4', '3', '2', '1'] }],
  ])('%s', (line, expected) => {
    expect(command(line)).toMatchObject(expected)
  })
})

describe('tightening', () => {
  test.each([
    [
      'tighten valve cover bolts: 10 Nm, dry',
      { piece: 'p1', passes: [{ newtonMetres: 10 }], condition: 'dry' },
    ],
    [
      'tighten cam caps: 12 Nm by crosswise because the manual has it so',
      { by: 'crosswise', because: 'the manual has it so' },
    ],
    [
      'tighten pump cover bolts: snug, 10 Nm, back off, 10 Nm clockwise, check 10 Nm, mark',
      {
        piece: short,
        with: [long],
        passes: [
          { kind: 'snug' },
          { kind: 'torque' },
          { kind: 'back-off' },
          { kind: 'torque', round: true },
          { kind: 'check' },
          { kind: 'witness' },
        ],
      },
    ],
    ['no torque because it keeps turning', { do: 'miss-torque', says: 'it keeps turning' }],
    ['no torque 3 of t1 because it gave way', { do: 'miss-torque', tightening: 't1', fastener: '3' }],
    ['threads T1 oiled', { do: 'say-condition', tightening: 't1', condition: 'oiled' }],
    ['turn 2 of l1', { do: 'tighten', tightening: 'l1', fastener: '2' }],
    ['turn l1', { do: 'tighten', tightening: 'l1' }],
  ])('%s', (line, expected) => {
    expect(command(line)).toMatchObject(expected)
  })
})

describe('turns by hand', () => {
  test.each([
    ['turned over', { do: 'turn-over', step: undefined }],
    ['crank 4', { do: 'turn-over', step: 4 }],
    ['add turn the crank over by hand turns 2', { do: 'add-step', kind: 'turn', turns: 2 }],
    ['add turn the crank 3 full turns', { do: 'add-step', kind: 'turn', turns: 3 }],
    ['add check the marks', { do: 'add-step', kind: 'check' }],
  ])('%s', (line, expected) => {
    expect(command(line)).toMatchObject(expected)
  })
})

describe('not understood, with the nearest line that is', () => {
  test.each([
    ['layout', 'missing'],
    ['layout rocker bolts: 2x4', 'no-such-piece'],
    ['arrow cam caps', 'missing'],
    ['arrow cam caps: ?? up', 'not-understood'],
    ['loosen', 'missing'],
    ['loosen rocker bolts', 'missing'],
    ['loosen head bolts 2x4: 20 Nm', 'passes'],
    ['loosen head bolts 2x4 in 0 steps', 'not-understood'],
    ['loosen head bolts 2x4: free order 1,?', 'not-understood'],
    ['tighten valve cover bolts: back off, 10 Nm', 'passes'],
    ['tighten valve cover bolts: mark, 10 Nm', 'passes'],
    ['no torque', 'reason-missing'],
    ['no torque of l1 because so', 'not-understood'],
    ['threads', 'missing'],
    ['threads t1', 'missing'],
    ['threads t1 shiny', 'not-understood'],
    ['turned over twice', 'not-a-number'],
    ['turned t1 because so', 'missing'],
  ])('%s: %s', (line, code) => {
    const reading = readLine(line, state)
    expect(reading.kind === 'misread' ? reading.misreading.code : reading.kind).toBe(code)
    // A nearest line is one that is understood; a part of one says where to go on.
    if (reading.kind !== 'misread' || !('nearest' in reading.misreading)) return
    const { nearest } = reading.misreading
    if (nearest?.includes(' ') && !nearest.includes('...')) {
      expect(readLine(nearest, state).kind).not.toBe('misread')
    }
  })

  test('nor is any of it in a job in which nothing came off', () => {
    for (const line of ['layout cam caps: 2x2', 'arrow cam caps left', 'tighten cam caps: 10 Nm'])
      expect(readLine(line, nothing)).toMatchObject({
        kind: 'misread',
        misreading: { code: 'no-such-piece' },
      })
  })
})
