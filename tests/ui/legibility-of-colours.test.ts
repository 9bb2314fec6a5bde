import {
  converter,
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
  type Rgb,
  wcagContrast,
} from 'culori'
import { describe, expect, test } from 'vitest'
import { lookOf, PAIRS } from '../../src/ui/screens/palette.ts'
import { SIGNS } from '../../src/ui/signs.ts'
import { widthOf } from '../../src/ui/text/line.ts'
import { NAMED_PALETTES, settledColour } from './support/terminal-palettes.ts'

const toRgb = converter('rgb')
const tones = Object.entries(PAIRS)

/** WCAG 2.2, success criterion 1.4.6: at least 7:1 between letters and their ground. */
const ENHANCED = 7

/**
 * In CIEDE2000 (ISO/CIE 11664-6). About 2 can just be told apart side by side; a chip is seen by itself, and at a
 * glance, so this asks for ten times that. A choice of this program.
 */
const FAR_APART = 20

/** Seen by everybody, and as Machado, Oliveira and Fernandes (2009) have it with each deficiency at its full. */
const eyes: readonly (readonly [string, (colour: Rgb) => Rgb])[] = [
  ['full colour vision', (colour) => colour],
  ['protanopia', filterDeficiencyProt(1)],
  ['deuteranopia', filterDeficiencyDeuter(1)],
  ['tritanopia', filterDeficiencyTrit(1)],
]

describe('letters on their ground', () => {
  test.each(tones)('of %s, in the 256 colours', (_, { settled: [letters, ground] }) => {
    expect(wcagContrast(settledColour(letters), settledColour(ground))).toBeGreaterThanOrEqual(ENHANCED)
  })

  test.each(NAMED_PALETTES)('in the sixteen of %s', (_, palette) => {
    for (const [, { named }] of tones) {
      const [letters, ground] = named
      expect(wcagContrast(palette[letters], palette[ground])).toBeGreaterThanOrEqual(ENHANCED)
    }
  })
})

describe('a ground', () => {
  const grounds = tones.map(([, { settled }]) => toRgb(settledColour(settled[1])) as Rgb)

  // WCAG 2.2, 1.4.11 asks 3:1 of what is needed to understand. The edge of a chip is not: its words are. But no ground
  // that carries letters at 7:1 has 3:1 to black and to white as well, so these are as near as the 256 come.
  test.each(tones)('of %s stands out from the dark and from the light', (_, { settled: [, ground] }) => {
    const edges = ['#000000', '#ffffff'].map((around) => wcagContrast(settledColour(ground), around))
    expect(Math.max(...edges)).toBeGreaterThanOrEqual(ENHANCED)
    expect(Math.min(...edges)).toBeGreaterThanOrEqual(2.6)
  })

  test.each(eyes)('is told from the others with %s', (_, seen) => {
    const difference = differenceCiede2000()
    for (const [index, ground] of grounds.entries())
      for (const other of grounds.slice(index + 1))
        expect(difference(seen(ground), seen(other))).toBeGreaterThanOrEqual(FAR_APART)
  })
})

describe('a state', () => {
  test('has a sign of one column and a word, which say it without a colour', () => {
    for (const { sign, word } of Object.values(SIGNS)) {
      expect(widthOf(sign)).toBe(1)
      expect(word).toMatch(/^[A-Z][A-Z ]*[A-Z]$/)
    }
  })

  test('that is good has a sign that no other has', () => {
    for (const { sign, tone } of Object.values(SIGNS)) expect(sign === '✓').toBe(tone === 'good')
  })

  test('is never in bold letters of a colour, which some terminals make grey', () => {
    for (const { tone } of Object.values(SIGNS)) {
      for (const depth of ['named', 'settled'] as const) {
        const { bold, color } = lookOf(tone, depth)
        expect(bold === undefined || color === undefined).toBe(true)
      }
    }
  })
})

test.each(['plain', 'strong', 'large', 'here', 'stop'] as const)(
  '%s takes the colours of the terminal, whatever they are',
  (tone) => {
    for (const depth of ['none', 'named', 'settled'] as const) {
      const { color, backgroundColor } = lookOf(tone, depth)
      expect([color, backgroundColor]).toEqual([undefined, undefined])
    }
  },
)
