/** Columns of a terminal that a text of letters, digits and signs takes: two for those of East Asian scripts. */
export function columnsOf(text: string): number {
  let columns = 0
  for (const character of text) columns += widthOf(character)
  return columns
}

/** As much of a text's beginning as fits; two dots stand for the rest. */
export function headOf(text: string, most: number): string {
  if (columnsOf(text) <= most) return text
  let head = ''
  let columns = 0
  for (const character of text) {
    columns += widthOf(character)
    if (columns > most - 2) break
    head += character
  }
  return `${head}..`.slice(0, most)
}

function widthOf(character: string): number {
  if (character < FIRST_COMBINING) return character === SOFT_HYPHEN ? 0 : 1
  if (/^[\p{Mn}\p{Me}\p{Cf}]$/u.test(character)) return 0
  return /^[\p{sc=Han}\p{sc=Hiragana}\p{sc=Katakana}\p{sc=Hangul}\u3000-\u303f\uff01-\uff60]$/u.test(
    character,
  )
    ? 2
    : 1
}

/** Before these all but one take one column. */
const FIRST_COMBINING = '\u0300'
const SOFT_HYPHEN = '\u00ad'
