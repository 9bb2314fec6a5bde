import { GLYPH_ROWS, GLYPHS } from './glyphs.ts'

/**
 * A short text in letters of five rows, or of twice or three times that, as large as `width` and `height` allow.
 * Null when it does not fit, or holds a character that has no drawing: then it is shown as plain text.
 */
export function bigLetters(text: string, width: number, height = GLYPH_ROWS): string[] | null {
  const rows = spelled(text.toUpperCase())
  const drawn = rows?.[0]?.length ?? 0
  if (!rows || drawn === 0) return null
  const scale = Math.min(3, Math.floor(width / drawn), Math.floor(height / GLYPH_ROWS))
  return scale < 1 ? null : enlarged(rows, scale)
}

const gap = ' '
const space = '   '

function spelled(text: string): string[] | null {
  const rows = Array<string>(GLYPH_ROWS).fill('')
  for (const [index, character] of [...text].entries()) {
    const glyph = character === ' ' ? Array<string>(GLYPH_ROWS).fill(space) : GLYPHS.get(character)
    if (!glyph) return null
    for (const [row, cells] of glyph.entries()) rows[row] += (index > 0 ? gap : '') + cells
  }
  return rows
}

function enlarged(rows: readonly string[], scale: number): string[] {
  return rows.flatMap((row) => {
    const wide = [...row].map((cell) => (cell === '#' ? '█' : ' ').repeat(scale)).join('')
    return Array<string>(scale).fill(wide)
  })
}
