import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { CHECK_LINE_MM, type TemplateContent } from '../../src/label/template-content.ts'
import type { PieceId } from '../../src/ledger/piece.ts'
import { templateFacts } from '../../src/session/template-facts.ts'
import { templateContent } from '../../src/words/template-text.ts'
import { bag, mark, matchedOff, off, strip } from '../support/commands.ts'
import { openJob, record } from '../support/journal.ts'

const caps = [strip('camshafts off'), matchedOff(['I1', 'I2', 'I3', 'E1', 'E2', 'E3'], 'cam caps')]
const pumpCover = [
  strip('water pump cover off'),
  off(1, 'pump cover bolt', { size: 'M6x40 hex 8', positions: ['4'] }),
  off(5, 'pump cover bolts', { size: 'M6x25 hex 8', alikeAt: ['1', '2', '3', '5', '6'], into: bag(1) }),
]

test('a set of caps', () => {
  expect(
    content([...caps, mark('arrow towards the chain', 'p1'), mark('arrow towards the chain', 'p4')], 'p2'),
  ).toEqual({
    kind: 'template',
    name: 'template for cam caps I1–I3, E1–E3',
    title: 'cam caps I1–I3, E1–E3',
    home: 'camshafts',
    mark: 'I1, E1: arrow towards the chain',
    edge: 'arrow: towards the chain',
    how: 'Lay each piece into its own box.',
    scale: 'Not to scale: positions as they lie to each other.',
    check: 'this line is 100 mm: print without scaling',
    job: '007 blue twin',
    places: ['I1', 'I2', 'I3', 'E1', 'E2', 'E3'].map((position) => ({
      position,
      caption: null,
      stands: false,
      diameterMm: null,
    })),
    container: { name: 'bag 1', code: '007000103' },
  })
})

test('bolts say their size, and the odd one stands out', () => {
  const { title, home, how, places } = content(pumpCover, 'p1')
  expect({ title, home, how }).toEqual({
    title: 'pump cover bolts 1–6',
    home: 'water pump cover',
    how: 'Stick onto cardboard and push each one through its own hole.',
  })
  expect(
    places.map(({ position, caption, stands, diameterMm }) => [position, caption, stands, diameterMm]),
  ).toEqual([
    ['1', 'M6x25 hex 8', false, 6],
    ['2', 'M6x25 hex 8', false, 6],
    ['3', 'M6x25 hex 8', false, 6],
    ['4', 'M6x40 hex 8', true, 6],
    ['5', 'M6x25 hex 8', false, 6],
    ['6', 'M6x25 hex 8', false, 6],
  ])
})

test('where no size is the usual one, none stands out', () => {
  const even = [
    strip('mount off'),
    off(2, 'mount bolts', { size: 'M8x30', alikeAt: ['1', '2'] }),
    off(2, 'mount bolts', { size: 'M8x45', alikeAt: ['3', '4'] }),
  ]
  expect(content(even, 'p1').places.some(({ stands }) => stands)).toBe(false)
})

describe('marks', () => {
  test('one that all carry is said without positions', () => {
    const all = [1, 2, 3, 4, 5, 6].map((n) => mark('arrow to the chain', `p${n}`))
    expect(content([...caps, ...all], 'p1').mark).toBe('arrow to the chain')
  })

  test('different ones stand at their pieces, and no edge is named after one of them', () => {
    const {
      mark: shared,
      edge,
      places,
    } = content([...caps, mark('arrow to the chain', 'p1'), mark('arrow to the exhaust', 'p4')], 'p1')
    expect(shared).toBeNull()
    expect(edge).toBe('arrows point to this edge')
    expect(places.map(({ caption }) => caption)).toEqual([
      'arrow to the chain',
      null,
      null,
      'arrow to the exhaust',
      null,
      null,
    ])
  })

  test('a mark of another piece, or of none, is not told', () => {
    const others = [matchedOff(['L', 'R'], 'camshafts'), mark('dot up', 'p7'), mark('chain is slack')]
    expect(content([...caps, ...others], 'p1').mark).toBeNull()
  })
})

test('two sets share a sheet', () => {
  const two = [
    strip('intake camshaft off'),
    matchedOff(['I1', 'I2', 'I3'], 'intake caps'),
    strip('exhaust camshaft off'),
    matchedOff(['E1'], 'exhaust caps'),
  ]
  const { title, home, container } = content(two, 'p1', 'p4')
  expect({ title, home, container }).toEqual({
    title: 'intake caps I1–I3 and exhaust cap E1',
    home: 'intake camshaft and exhaust camshaft',
    container: null,
  })
})

test('a sheet at full size says so', () => {
  const { state } = record([openJob, ...pumpCover])
  const facts = templateFacts(state, ['p1'])
  expect(facts.ok && templateContent(state, facts.facts, 32.5).scale).toBe(
    'Full size 1:1, 32.5 mm between neighbours.',
  )
})

test('the check line is as long as it says', () => {
  expect(content(caps, 'p1').check).toContain(`${CHECK_LINE_MM} mm`)
})

function content(commands: readonly Command[], ...pieces: PieceId[]): TemplateContent {
  const { state } = record([openJob, ...commands])
  const reading = templateFacts(state, pieces)
  if (!reading.ok) throw new Error(JSON.stringify(reading.refusal))
  return templateContent(state, reading.facts, null)
}
