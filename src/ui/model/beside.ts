import { bigLetters } from '../controls/big-letters/big-letters.ts'
import { LETTER_ROWS } from '../controls/big-letters/font.ts'
import { blank, type Line, large, line, padded, widthOf, wrap } from '../text/line.ts'

/** Large letters with a few rows of text beside them; the text alone where the letters do not fit. */
export function besideLetters(letters: string, text: readonly Line[], width: number): Line[] {
  const drawn = bigLetters(letters, Math.floor(width / 2))
  const left = drawn ? Math.max(...drawn.map(widthOf)) + 8 : 5
  const rows = text.flatMap((each) => wrap(each, Math.max(20, width - left)))
  if (!drawn) return rows.map((row) => line('     ', ...row))
  const height = Math.max(LETTER_ROWS, rows.length)
  return Array.from({ length: height }, (_, index) => {
    const letter = line('     ', large(drawn[index] ?? ''))
    const beside = rows[index] ?? blank
    return beside.length === 0 ? letter : line(...padded(letter, left), ...beside)
  })
}
