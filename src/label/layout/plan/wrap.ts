import { lettersOf } from '../shorten.ts'

/**
 * A text in lines no wider than that, broken at spaces, and within words only where one alone is too wide. Nothing is
 * lost but the spaces at the breaks. A line holds one letter at least, however narrow.
 */
export function wrap(text: string, width: number, widthOf: (text: string) => number): string[] {
  const lines: string[] = []
  let line = ''
  for (const unit of unitsOf(text)) {
    const longer = line === '' ? unit : `${line} ${unit}`
    if (widthOf(longer) <= width) {
      line = longer
      continue
    }
    if (line !== '') lines.push(line)
    const pieces = widthOf(unit) <= width ? [unit] : brokenUp(unit, width, widthOf)
    lines.push(...pieces.slice(0, -1))
    line = pieces.at(-1) ?? ''
  }
  return line === '' ? lines : [...lines, line]
}

/** Words, those that belong together as one: a count with its sign and the first word after it, an arrow with its end. */
function unitsOf(text: string): string[] {
  const units: string[] = []
  let glue = false
  for (const word of text.split(' ')) {
    const last = units.at(-1)
    const joins = last !== undefined && (glue || word === '×') && last.length + word.length < 24
    if (joins) units[units.length - 1] = `${last} ${word}`
    else if (word !== '') units.push(word)
    glue = word === '×' || word === '→'
  }
  return units
}

function brokenUp(unit: string, width: number, widthOf: (text: string) => number): string[] {
  const letters = lettersOf(unit)
  const pieces: string[] = []
  let from = 0
  while (from < letters.length) {
    // Letter by letter, for that needs few measurements; kerning may then ask for one less.
    let to = from + 1
    let sum = widthOf(letters[from] ?? '')
    for (; to < letters.length; to++) {
      sum += widthOf(letters[to] ?? '')
      if (sum > width) break
    }
    while (to > from + 1 && widthOf(letters.slice(from, to).join('')) > width) to--
    pieces.push(letters.slice(from, to).join('').trim())
    from = to
  }
  return pieces.filter((piece) => piece !== '')
}
