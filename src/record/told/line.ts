import { oneLine } from '../../words/label-text/one-line.ts'

/** One statement of the record. Too long for the paper, it goes on under its own text. */
export interface Line {
  /** What stands before the text, spaces and all. */
  lead: string
  text: string
  /** How far the rows after the first are set in. */
  hang: number
}

/** A statement set in by a number of columns. */
export function line(text: string, indent = 0): Line {
  return { lead: ' '.repeat(indent), text, hang: indent + 2 }
}

/** A heading of a section, with an empty row above. */
export function heading(text: string): Line[] {
  return [line(''), line(text), line('-'.repeat(text.length))]
}

/** Breaks statements into rows of at most so many characters, between words where it can. */
export function rowsOf(lines: readonly Line[], width: number): string[] {
  return lines.flatMap(({ lead, text, hang }) => {
    const rows: string[] = []
    let row = lead
    let isFresh = true
    for (const word of wordsOf(oneLine(text), width - Math.max(lead.length, hang))) {
      if (!isFresh && lengthOf(row) + 1 + lengthOf(word) > width) {
        rows.push(row)
        row = ' '.repeat(hang)
        isFresh = true
      }
      row += isFresh ? word : ` ${word}`
      isFresh = false
    }
    return [...rows, row.trimEnd()]
  })
}

/** The words of a text; one that is longer than a whole row is cut. */
function wordsOf(text: string, longest: number): string[] {
  return text.split(' ').flatMap((word) => {
    const characters = [...word]
    if (characters.length <= longest) return [word]
    const parts: string[] = []
    for (let at = 0; at < characters.length; at += longest)
      parts.push(characters.slice(at, at + longest).join(''))
    return parts
  })
}

function lengthOf(text: string): number {
  return [...text].length
}
