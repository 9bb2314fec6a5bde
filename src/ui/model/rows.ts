import { blank, type Line, line, plain, strong, widthOf, wrap } from '../text/line.ts'

/** A heading over some rows. */
export function heading(text: string): Line {
  return [strong(text)]
}

/** A numbered row: what is typed to choose it stands in front. */
export function numbered(no: number, text: Line | string, width: number): Line[] {
  return wrap(numberedRow(no, text), width, 5)
}

/** The same, however long it becomes. */
export function numberedRow(no: number, text: Line | string): Line {
  return line(strong(String(no).padStart(3)), '  ', ...spans(text))
}

/** Choices beside each other, as many as fit on a row, each whole. */
export function flowed(choices: Iterable<readonly [number, { says: string }]>, width: number): Line[] {
  const rows: Line[] = []
  for (const [no, { says }] of choices) {
    const item = line(strong(String(no).padStart(3)), `  ${says}`)
    const last = rows.at(-1)
    if (last && widthOf(last) + 2 + widthOf(item) <= width) rows[rows.length - 1] = line(last, '  ', item)
    else rows.push(...wrap(item, width, 5))
  }
  return rows
}

/** Names in one flow, on at most `most` rows; what does not fit is counted. */
export function inOneFlow(names: readonly string[], width: number, most: number): Line[] {
  return flowing(names, most, (text) => indented([plain(text)], width))
}

/** The same beside a label. */
export function labelledFlow(label: string, names: readonly string[], width: number, most: number): Line[] {
  return flowing(names, most, (text) => labelled(label, [[plain(text)]], width))
}

function flowing(names: readonly string[], most: number, rowsOf: (text: string) => Line[]): Line[] {
  if (names.length === 0) return []
  for (let shown = Math.min(names.length, MOST_NAMES); shown > 0; shown -= 1) {
    const left = names.length - shown
    const text = names.slice(0, shown).join(', ') + (left > 0 ? `, and ${left} more` : '')
    const rows = rowsOf(text)
    if (rows.length <= most) return rows
  }
  return rowsOf(`${names.length} of them`)
}

/** More have no room on any screen, and are not tried. */
const MOST_NAMES = 200

/** A row under a heading, broken where it is too long. */
export function indented(text: Line | string, width: number): Line[] {
  return wrap(line('     ', ...spans(text)), width, 5)
}

const LABEL_WIDTH = 13

/** Texts beside the word that says what they are; nothing when there are none. */
export function labelled(label: string, texts: readonly (Line | string)[], width: number): Line[] {
  return texts.flatMap((text, index) =>
    wrap(
      line(strong(` ${index === 0 ? label : ''}`.padEnd(LABEL_WIDTH)), ...spans(text)),
      width,
      LABEL_WIDTH,
    ),
  )
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

/** A reason or another point of a list, hung under its dot. */
export function bulleted(text: string, width: number): Line[] {
  return wrap(line('     · ', ...withWords(text)), width, 7)
}

/** A line that was told: it keeps the spaces it begins with, for they say what it belongs to. */
export function toldRows(text: string, width: number): Line[] {
  const indent = 5 + (/^ */.exec(text)?.[0].length ?? 0)
  return wrap(line(' '.repeat(indent), ...withWords(text.trim())), width, indent + 2)
}

/** Words in double quotes are words to type: they stand out. */
export function withWords(text: string): Line {
  return text.split(/("[^"]*")/).map((part) => (part.startsWith('"') ? strong(part) : plain(part)))
}

function spans(text: Line | string): Line {
  return typeof text === 'string' ? withWords(text) : text
}
