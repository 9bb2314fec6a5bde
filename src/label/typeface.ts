import { create, type Font } from 'fontkit'
import type { Weight } from './drawing.ts'
import { missingCharacters } from './missing-characters.ts'

/** What the layout and the drawing need to know of the fonts. Sizes and widths in millimetres. */
export interface Typeface {
  /** How wide a text is, set at that em. */
  widthOf(text: string, size: number, weight: Weight): number
  /** The outline as SVG path data, in millimetres, y down, the start of the baseline at 0, 0. */
  outlineOf(text: string, size: number, weight: Weight): string
  /** The characters that the fonts cannot draw, each once; empty when all is well. */
  missing(text: string): string[]
  /** The font files themselves, for a PDF to embed. */
  readonly files: Readonly<Record<Weight, Uint8Array>>
}

/**
 * Opens two font files (TrueType or OpenType), kerned as they say.
 * @throws Error when one of them is no font.
 */
export function openTypeface(plain: Uint8Array, strong: Uint8Array): Typeface {
  const fonts = { plain: openFont(plain), strong: openFont(strong) }
  const both = [fonts.plain, fonts.strong]
  return {
    widthOf(text, size, weight) {
      const words = wordsOf(text).map(fonts[weight].set)
      return words.reduce((sum, { width }) => sum + width, 0) * size
    },
    outlineOf(text, size, weight) {
      let left = 0
      const paths = wordsOf(text).map((word) => {
        const { width, commands } = fonts[weight].set(word)
        const path = commands.map((each) => each.letter + pairs(each.at, left, size)).join('')
        left += width
        return path
      })
      return paths.join('')
    },
    missing: (text) => missingCharacters(text, (point) => both.every((font) => font.hasGlyph(point))),
    files: { plain, strong },
  }
}

/** A text as it can be drawn: what the fonts lack stands as the replacement character. */
export function drawableText(text: string, typeface: Pick<Typeface, 'missing'>): string {
  const missing = typeface.missing(text)
  if (missing.length === 0) return text
  return [...text].map((character) => (missing.includes(character) ? '\ufffd' : character)).join('')
}

/** A word as it is set at an em of 1: its width and its outline, x and y by turns, y down. */
interface SetWord {
  width: number
  commands: { letter: string; at: number[] }[]
}

const MOST_WORDS = 5000

function openFont(file: Uint8Array) {
  // The declared type asks for a Buffer, the code for any view of bytes.
  const font = create(file as Parameters<typeof create>[0])
  if (!('layout' in font)) throw new Error('A collection of fonts, not one font')
  const words = new Map<string, SetWord>()
  return {
    hasGlyph: (point: number) => font.hasGlyphForCodePoint(point),
    set(word: string): SetWord {
      const known = words.get(word)
      if (known) return known
      const set = setWord(font, word)
      // Fitting a text tries many cuts of it: without an end the memory would go.
      if (words.size >= MOST_WORDS) words.clear()
      words.set(word, set)
      return set
    },
  }
}

// Each word with the space after it is set by itself, as the PDF library does, so that every form of a label is set alike.
function wordsOf(text: string): string[] {
  return text.match(/[^ ]* |[^ ]+$/g) ?? []
}

function setWord(font: Font, word: string): SetWord {
  const { glyphs, positions } = font.layout(word)
  const em = font.unitsPerEm
  const commands: SetWord['commands'] = []
  let pen = 0
  for (const [index, glyph] of glyphs.entries()) {
    const { xAdvance = 0, xOffset = 0, yOffset = 0 } = positions[index] ?? {}
    for (const { command, args } of glyph.path.commands) {
      const at = args.map((value, n) => (n % 2 === 0 ? pen + xOffset + value : -(yOffset + value)) / em)
      commands.push({ letter: letters[command] ?? '', at })
    }
    pen += xAdvance
  }
  return { width: pen / em, commands }
}

const letters: Record<string, string> = {
  moveTo: 'M',
  lineTo: 'L',
  quadraticCurveTo: 'Q',
  bezierCurveTo: 'C',
  closePath: 'Z',
}

// A micrometre is finer than any printer.
function pairs(at: readonly number[], left: number, size: number): string {
  return at.map((value, n) => Math.round((n % 2 === 0 ? left + value : value) * size * 1000) / 1000).join(' ')
}
