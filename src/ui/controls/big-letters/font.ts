// The variant of the library that never looks for fonts on the disk.
import figlet from 'figlet/browser'
import miniBlock from 'figlet/fonts/Linguaholic Mini Block'

/** Rows of every letter. */
export const LETTER_ROWS = 5

const kept = new Map<string, readonly string[] | null>()

/** A character as rows of `#` and spaces; null where the font lacks it, or part of it hangs below the line. */
export function glyphOf(character: string): readonly string[] | null {
  let glyph = kept.get(character)
  if (glyph === undefined) {
    glyph = drawn(STANDS_FOR[character] ?? character)
    kept.set(character, glyph)
  }
  return glyph
}

/** What the font lacks and says the same; the dot between units is a gap. */
const STANDS_FOR: Readonly<Record<string, string>> = { '–': '-', '×': 'x' }
const GAPS: Readonly<Record<string, string>> = { ' ': '  ', '·': ' ' }

function drawn(character: string): string[] | null {
  const gap = GAPS[character]
  if (gap !== undefined) return Array<string>(LETTER_ROWS).fill(gap)
  const all = unfolded(inFont(character))
  const rows = all.slice(0, LETTER_ROWS)
  const width = Math.max(0, ...rows.map((row) => row.trimEnd().length))
  if (width === 0 || all.slice(LETTER_ROWS).some((row) => row.trim() !== '')) return null
  // Digits under each other line up: 1 is narrower than the others.
  const least = /\d/.test(character) ? DIGIT_WIDTH : width
  return rows.map((row) => row.slice(0, width).padStart(least))
}

const DIGIT_WIDTH = 4
const FONT = 'Mini Block'

function inFont(character: string): string[] {
  if (!figlet.loadedFonts().includes(FONT)) figlet.parseFont(FONT, miniBlock)
  return figlet.textSync(character, { font: FONT, horizontalLayout: 'full' }).split('\n')
}

/**
 * The font packs two rows into one by blocks of half a row. Here each has a row of its own: then a stroke is as thick
 * as a row is high, and nothing but full blocks is drawn.
 */
function unfolded(packed: readonly string[]): string[] {
  return packed.flatMap((row) => [inked(row, '█▀'), inked(row, '█▄')])
}

function inked(row: string, blocks: string): string {
  return [...row].map((cell) => (blocks.includes(cell) ? '#' : ' ')).join('')
}
