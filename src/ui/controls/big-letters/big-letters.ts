import { glyphOf, LETTER_ROWS } from './font.ts'

/**
 * Texts under each other in letters of five rows, or of twice or three times that: as tall as there is room for, then as
 * wide, broken between words where that helps. Null when they do not fit, or hold a character that the font lacks: then
 * they are shown as plain text.
 */
export function bigLetters(
  texts: string | readonly string[],
  width: number,
  height = LETTER_ROWS,
  sizes = SIZES,
): string[] | null {
  const words = [texts].flat().map((text) => text.trim().split(/ +/).map(spelled))
  for (const size of sizes) {
    const rows = inSize(words, size, width)
    if (rows && rows.length > 0 && rows.length <= height) return rows
  }
  return null
}

/** How often each cell of a letter is drawn to the side and down. */
interface LetterSize {
  wide: number
  tall: number
}

/** A column is half as wide as a row is high: twice as wide as tall looks right, and half of that can still be read. */
const SIZES: readonly LetterSize[] = [3, 2, 1].flatMap((tall) =>
  Array.from({ length: tall + 1 }, (_, index) => ({ tall, wide: 2 * tall - index })),
)

/** Those that are hardly narrower than they should be. */
export const BROAD_SIZES = SIZES.filter(({ wide, tall }) => wide > tall)

type Rows = readonly string[]

function inSize(
  texts: readonly (readonly (Rows | null)[])[],
  { wide, tall }: LetterSize,
  width: number,
): string[] | null {
  const rows: string[] = []
  for (const words of texts) {
    const lines = broken(words, Math.floor(width / wide))
    if (!lines) return null
    for (const line of lines) {
      if (rows.length > 0) rows.push(...Array<string>(tall).fill(''))
      rows.push(...enlarged(line, wide, tall))
    }
  }
  return rows
}

/** As many words on a line as fit; null where one is too long by itself. */
function broken(words: readonly (Rows | null)[], width: number): Rows[] | null {
  const lines: Rows[] = []
  for (const word of words) {
    if (!word || widthOf(word) === 0 || widthOf(word) > width) return null
    const last = lines.at(-1)
    const longer = last && beside(beside(last, glyphOf(' ') ?? word), word)
    if (longer && widthOf(longer) <= width) lines[lines.length - 1] = longer
    else lines.push(word)
  }
  return lines
}

/** In capitals; a unit as it is, for M is not m. */
function spelled(word: string): Rows | null {
  const text = word.includes('·') ? word : word.toUpperCase()
  const glyphs = [...text].map((character) => glyphOf(character))
  return glyphs.reduce((left, right) => left && right && beside(left, right), glyphs[0] && EMPTY) ?? null
}

const EMPTY: Rows = Array<string>(LETTER_ROWS).fill('')

function beside(left: Rows, right: Rows): Rows {
  const gap = left === EMPTY ? '' : ' '
  return left.map((row, index) => row + gap + (right[index] ?? ''))
}

function widthOf([first = '']: Rows): number {
  return first.length
}

function enlarged(rows: Rows, wide: number, tall: number): string[] {
  return rows.flatMap((row) => {
    const cells = [...row].map((cell) => (cell === '#' ? '█' : ' ').repeat(wide)).join('')
    return Array<string>(tall).fill(cells)
  })
}
