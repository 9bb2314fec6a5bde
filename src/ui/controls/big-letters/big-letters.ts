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

/**
 * Texts under each other in letters of five rows, broken between words where they are too wide; null when they do not
 * all fit.
 */
export function bigLines(texts: readonly string[], width: number, height: number): string[] | null {
  const rows: string[] = []
  for (const text of texts) {
    for (const part of broken(text, width)) {
      const drawn = bigLetters(part, width)
      if (!drawn) return null
      rows.push(...(rows.length > 0 ? [''] : []), ...drawn)
    }
  }
  return rows.length > height ? null : rows
}

function broken(text: string, width: number): string[] {
  const parts: string[] = []
  for (const word of text.split(' ')) {
    const last = parts.at(-1)
    const longer = `${last} ${word}`
    if (last !== undefined && bigLetters(longer, width)) parts[parts.length - 1] = longer
    else parts.push(word)
  }
  return parts
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
