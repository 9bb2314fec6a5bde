import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { layoutFor, layoutOf, patternOf } from '../../src/plan/pattern.ts'
import { aidIn, at, drawn, endStrip, matchedOff, move, off, replace, strip } from '../support/commands.ts'
import { given } from '../support/journal.ts'

/** The pattern of the first piece in a few words: `1=p1 2=p1`, or why there is none. */
function pattern(...commands: Command[]): string {
  const found = patternOf(given(...commands).state, 'p1')
  return 'code' in found
    ? found.code
    : found.places.map((place) => `${place.position}=${place.piece}`).join(' ')
}

describe('the positions of a pattern', () => {
  test.each<[string, Command[], string]>([
    ['alike bolts are numbered', [off(3, 'cover bolts')], '1=p1 2=p1 3=p1'],
    [
      'alike bolts by written names',
      [off(2, 'mount bolts', { alikeAt: ['left', 'right'] })],
      'left=p1 right=p1',
    ],
    ['a matched set by its positions', [matchedOff(['I2', 'I1'], 'cap')], 'I2=p1 I1=p2'],
    [
      'a long bolt among short ones, by number',
      [
        off(3, 'cover bolts', { alikeAt: ['1', '2', '4'] }),
        matchedOff(['3'], 'cover bolt', { kind: 'fastener' }),
      ],
      '1=p1 2=p1 3=p2 4=p1',
    ],
    [
      'a lot takes the numbers that another leaves',
      [off(3, 'cover bolts'), off(1, 'cover bolts', { alikeAt: ['2'], size: 'M6x40' })],
      '1=p1 2=p2 3=p1 4=p1',
    ],
    ['what has another name is not of it', [off(2, 'cover bolts'), off(2, 'cover studs')], '1=p1 2=p1'],
    [
      'what takes the home of another stands where that one stood',
      [matchedOff(['I1', 'I2', 'I3'], 'cap'), endStrip, replace('p1', 1)],
      'I1=p4 I2=p2 I3=p3',
    ],
    ['a rag has none', [aidIn('rag')], 'pattern-not-of'],
    ['one bolt alone has none', [off(1, 'drain plug')], 'pattern-single'],
    ['one bolt at a written position is one', [matchedOff(['4'], 'long bolt')], '4=p1'],
    [
      'two lots of which nobody wrote down which is where have none',
      [off(2, 'cover bolts', { size: 'M6x25' }), off(2, 'cover bolts', { size: 'M6x40' })],
      'pattern-positions-unknown',
    ],
    [
      'numbers that do not add up have none',
      [off(2, 'cover bolts'), off(1, 'cover bolts', { alikeAt: ['9'], size: 'M6x40' })],
      'pattern-positions-unknown',
    ],
    [
      'a position written down for two lots leaves open which is there',
      [
        off(4, 'cover bolts', { alikeAt: ['1', '2', '3', '4'] }),
        off(2, 'cover bolts', { alikeAt: ['4', '5'], size: 'M6x40' }),
      ],
      'pattern-position-shared',
    ],
  ])('%s', (_, commands, expected) => {
    expect(pattern(strip('cover off'), ...commands)).toBe(expected)
  })

  test('old pieces that were scrapped for new ones are not of it', () => {
    expect(pattern(off(2, 'bolts'), endStrip, move('p1', at('scrap')), replace('p1', 2))).toBe('1=p2 2=p2')
  })
})

describe('the drawing of a pattern', () => {
  const caps = [matchedOff(['I1', 'I2', 'I3', 'I4'], 'cap'), drawn('p2', 2, 'I1', 'I2', 'I3', 'I4')]

  test('is found by each piece of it, and by what takes their homes', () => {
    const { state } = given(...caps, endStrip, replace('p3', 1))
    for (const piece of ['p1', 'p2', 'p3', 'p4', 'p5'] as const)
      expect(layoutOf(state, piece)?.places).toHaveLength(4)
    expect(layoutOf(given(...caps, off(2, 'bolts')).state, 'p5')).toBeUndefined()
  })

  test('drawn anew, the new one counts', () => {
    const { state } = given(...caps, drawn('p1', 4, 'I4', 'I3', 'I2', 'I1'))
    expect(state.layouts).toHaveLength(1)
    expect(layoutOf(state, 'p1')?.places[0]?.position).toBe('I4')
  })

  test('shows a part of it, in the same places; nothing where a position is missing', () => {
    const layout = layoutOf(given(...caps).state, 'p1')
    expect(layoutFor(layout, ['I3', 'I1'])?.places).toEqual([
      { position: 'I1', x: 0, y: 0 },
      { position: 'I3', x: 0, y: 1 },
    ])
    expect(layoutFor(layout, ['I1', 'E1'])).toBeUndefined()
    expect(layoutFor(undefined, [])).toBeUndefined()
  })
})
