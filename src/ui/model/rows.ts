import { blank, type Line, line, plain, strong, wrap } from '../text/line.ts'

/** A heading over some rows. */
export function heading(text: string): Line {
  return [strong(text)]
}

/** A numbered row: what is typed to choose it stands in front. */
export function numbered(no: number, text: Line | string, width: number): Line[] {
  const label = strong(String(no).padStart(3))
  return wrap(line(label, '  ', ...spans(text)), width, 5)
}

/** A row under a heading, broken where it is too long. */
export function indented(text: Line | string, width: number): Line[] {
  return wrap(line('     ', ...spans(text)), width, 5)
}

/** Groups of rows with an empty row between; empty groups are left out. */
export function groups(...parts: readonly (readonly Line[])[]): Line[] {
  const filled = parts.filter((part) => part.length > 0)
  return filled.flatMap((part, index) => (index === 0 ? [...part] : [blank, ...part]))
}

/** A heading with rows under it; nothing when there are none. */
export function headed(title: string, rows: readonly Line[]): Line[] {
  return rows.length === 0 ? [] : [heading(title), ...rows]
}

/** Words in double quotes are words to type: they stand out. */
export function withWords(text: string): Line {
  return text.split(/("[^"]*")/).map((part) => (part.startsWith('"') ? strong(part) : plain(part)))
}

/** Whether every word is in a text, whatever their order. */
export function holdsWords(text: string, words: string): boolean {
  const inside = text.toLowerCase()
  return words
    .toLowerCase()
    .split(/\s+/)
    .every((word) => inside.includes(word))
}

function spans(text: Line | string): Line {
  return typeof text === 'string' ? withWords(text) : text
}
