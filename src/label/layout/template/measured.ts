import type { TemplatePlace } from '../../template-content.ts'
import type { Typeface } from '../../typeface.ts'

/** A place with the widths of its words at an em of 1, so that cells can be tried out by arithmetic alone. */
export interface MeasuredPlace extends TemplatePlace {
  nameWidth: number
  words: { text: string; width: number }[]
}

/** Measures the names and captions of places. */
export function measuredPlaces(places: readonly TemplatePlace[], typeface: Typeface): MeasuredPlace[] {
  return places.map((place) => ({
    ...place,
    nameWidth: typeface.widthOf(place.position, 1, 'strong'),
    words: wordsOf(place.caption ?? '').map((text) => ({
      text,
      width: typeface.widthOf(text, 1, captionWeight(place)),
    })),
  }))
}

/** What is unlike the others is set so that it is seen. */
export function captionWeight({ stands }: TemplatePlace): 'plain' | 'strong' {
  return stands ? 'strong' : 'plain'
}

/** How many lines words take in a column; a word wider than the column takes more than there ever are. */
export function linesTaken(words: MeasuredPlace['words'], width: number, space: number): number {
  let lines = 0
  let left = Number.NEGATIVE_INFINITY
  for (const word of words) {
    if (word.width > width) return Number.POSITIVE_INFINITY
    if (word.width + space <= left) left -= word.width + space
    else {
      lines += 1
      left = width - word.width
    }
  }
  return lines
}

/** A text in lines of a width, at most so many; what is left over goes, and an ellipsis says so. Millimetres. */
export function wrapped(
  text: string,
  column: { width: number; size: number; weight: 'plain' | 'strong'; most: number },
  typeface: Typeface,
): string[] {
  const { width, size, weight, most } = column
  const fits = (line: string) => typeface.widthOf(line, size, weight) <= width
  const lines: string[] = []
  const words = wordsOf(text)
  for (const [at, word] of words.entries()) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`
    if (lines.length > 0 && fits(longer)) lines[lines.length - 1] = longer
    else if (lines.length < most && fits(word)) lines.push(word)
    else {
      const rest = words.slice(at).join(' ')
      const last = lines.length < most ? rest : `${lines.pop() ?? ''} ${rest}`
      return [...lines, shortened(last, fits)]
    }
  }
  return lines
}

/** The beginning of a text that fits, with an ellipsis. */
function shortened(text: string, fits: (text: string) => boolean): string {
  const characters = [...text]
  while (characters.length > 0 && !fits(`${characters.join('').trimEnd()}…`)) characters.pop()
  return `${characters.join('').trimEnd()}…`
}

function wordsOf(text: string): string[] {
  return text.split(' ').filter((word) => word !== '')
}
