import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { labelCode } from '../../src/label/code.ts'
import type { PieceId } from '../../src/ledger/piece.ts'
import { type TemplateFacts, templateFacts } from '../../src/session/template-facts.ts'
import { at, bag, hand, matchedOff, move, newBag, off, replace, strip } from '../support/commands.ts'
import { openJob, record } from '../support/journal.ts'

const pumpCover = [
  strip('water pump cover off'),
  off(5, 'pump cover bolts', { size: 'M6x25 hex 8', alikeAt: ['1', '2', '3', '5', '6'] }),
  off(1, 'pump cover bolt', { size: 'M6x40 hex 8', positions: ['4'], into: bag(1) }),
]

describe('the set that a piece belongs to', () => {
  test('a long bolt and its look-alikes are one drawing, each with its own size', () => {
    for (const asked of ['p1', 'p2'] as const) {
      const { sets } = facts(pumpCover, asked)
      expect(sets.map((set) => set.places.map(({ position, piece }) => `${position} ${piece}`))).toEqual([
        ['1 p1', '2 p1', '3 p1', '4 p2', '5 p1', '6 p1'],
      ])
    }
  })

  test('a matched set comes in the order in which it was written, by whichever of its pieces it is named', () => {
    const caps = [strip('camshafts off'), matchedOff(['I2', 'I1', 'E2', 'E1'], 'cam caps')]
    expect(positions(caps, 'p3')).toEqual([['I2', 'I1', 'E2', 'E1']])
  })

  test('a piece that took the place of another stands where that one stood', () => {
    const shims = [strip('shims out'), matchedOff(['1', '2', '3'], 'shims'), replace('p2', 1)]
    const [set] = facts(shims, 'p1').sets
    expect(set?.places.map(({ position, piece }) => `${position} ${piece}`)).toEqual(['1 p1', '2 p4', '3 p3'])
    expect(positions(shims, 'p2')).toEqual([['1', '2', '3']])
  })

  test('what goes by the same name elsewhere is another set', () => {
    const two = [
      strip('left cover off'),
      off(2, 'cover bolts', { alikeAt: ['L1', 'L2'] }),
      strip('right cover off'),
      off(2, 'cover bolts', { alikeAt: ['R1', 'R2'] }),
    ]
    expect(positions(two, 'p2')).toEqual([['R1', 'R2']])
    expect(positions(two, 'p2', 'p1', 'p2')).toEqual([
      ['R1', 'R2'],
      ['L1', 'L2'],
    ])
  })

  test('look-alikes without written positions are numbered, or take the numbers that others leave', () => {
    expect(positions([strip('sump off'), off(4, 'sump bolts')], 'p1')).toEqual([['1', '2', '3', '4']])
    const one = [strip('sump off'), off(3, 'sump bolts'), off(1, 'sump bolt', { positions: ['2'] })]
    expect(positions(one, 'p1')).toEqual([['1', '2', '3', '4']])
    expect(facts(one, 'p1').sets[0]?.places[1]?.piece).toBe('p2')
  })
})

describe('the thread that goes through the sheet', () => {
  test.each([
    ['M6x25 hex 8', 6],
    ['M10x1.25x60', 10],
    ['3/8-16x1-1/2 hex 9/16', 9.525],
    ['1/4 NPT', 13.716],
    ['25 mm across', null],
    [undefined, null],
  ])('%s: %s mm', (size, diameter) => {
    const [set] = facts([strip('cover off'), off(2, 'bolts', { size })], 'p1').sets
    expect(set?.places.map(({ diameterMm }) => diameterMm)).toEqual([diameter, diameter])
  })

  test('a part has none, whatever its size looks like', () => {
    const [set] = facts([strip('shims out'), matchedOff(['1', '2'], 'shims', { size: 'M6x25' })], 'p1').sets
    expect(set?.places.map(({ diameterMm }) => diameterMm)).toEqual([null, null])
  })
})

describe('the container', () => {
  const one = { no: 1, code: labelCode(7, 1) }

  test('is the one that all lies in', () => {
    expect(facts(pumpCover, 'p1').container).toEqual(one)
  })

  test('is none where they lie in two, or on the bench', () => {
    expect(facts([...pumpCover, move('p2', newBag)], 'p1').container).toBeNull()
    expect(facts([...pumpCover, move('p2', at('bench'))], 'p1').container).toBeNull()
  })

  test('what is gone for good lies nowhere', () => {
    const gone = move('p2', at('scrap'), { reason: 'bent' })
    expect(facts([...pumpCover, gone], 'p1').container).toEqual(one)
  })
})

describe('what has no template', () => {
  test.each<[string, Command[], PieceId[], unknown]>([
    [
      'a hose',
      [strip('hoses off'), matchedOff(['pump', 'radiator'], 'coolant hose', { kind: 'connection' })],
      ['p1'],
      { code: 'pattern-not-of', piece: 'p1' },
    ],
    [
      'a single cover',
      [strip('cover off'), off(1, 'cover', { kind: 'part', into: hand })],
      ['p1'],
      { code: 'pattern-single', piece: 'p1' },
    ],
    [
      'two lots of which nobody knows which is where',
      [strip('mount off'), off(2, 'bolts', { size: 'M8x30' }), off(2, 'bolts', { size: 'M8x45' })],
      ['p1'],
      { code: 'pattern-positions-unknown', pieces: ['p1', 'p2'] },
    ],
    [
      'two sets with the same positions',
      [
        strip('intake cam off'),
        matchedOff(['1', '2'], 'intake caps'),
        matchedOff(['1', '2'], 'exhaust caps'),
      ],
      ['p1', 'p3'],
      { code: 'template-position-shared', position: '1', pieces: ['p1', 'p3'] },
    ],
    [
      'more than a layout may have',
      [strip('floor off'), off(201, 'screws')],
      ['p1'],
      { code: 'template-too-many', positions: 201, most: 200 },
    ],
  ])('%s', (_name, commands, pieces, refusal) => {
    expect(templateFacts(record([openJob, ...commands]).state, pieces)).toEqual({ ok: false, refusal })
  })
})

function facts(commands: readonly Command[], ...pieces: PieceId[]): TemplateFacts {
  const reading = templateFacts(record([openJob, ...commands]).state, pieces)
  if (!reading.ok) throw new Error(JSON.stringify(reading.refusal))
  return reading.facts
}

function positions(commands: readonly Command[], ...pieces: PieceId[]): string[][] {
  return facts(commands, ...pieces).sets.map(({ places }) => places.map(({ position }) => position))
}
