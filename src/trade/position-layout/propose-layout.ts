import { inRows, MOST_ACROSS, type PlacedPosition, type PositionLayout } from './position-layout.ts'

/** A layout that follows from the names of the positions alone, and from which rule; the user knows better. */
export interface ProposedLayout {
  layout: PositionLayout
  rule: LayoutRule
}

export type LayoutRule =
  /** `A1..B4`: letters in order name the rows, numbers the columns. */
  | { rule: 'lettered-rows'; rows: string[] }
  /** `I1..I4,E1..E4`, `1L 1R 2L 2R`: what stands around the number names the row, in the order given. */
  | { rule: 'named-rows'; rows: string[] }
  /** `1..8`, `I1..I8`: one row by number, with gaps where numbers are missing. */
  | { rule: 'numbered-row' }
  /** No pattern in the names: a row in the order given. */
  | { rule: 'as-given' }
  /** The same, wrapped after so many columns. */
  | { rule: 'wrapped'; columns: number }

/**
 * Proposes how positions lie. That equal numbers of different rows stand one above the other, and that numbers grow
 * to the right, is common practice and no more; names say nothing of circles.
 */
export function proposeLayout(positions: readonly string[]): ProposedLayout {
  return inNamedRows(positions) ?? asGiven(positions)
}

interface Numbered {
  position: string
  row: string
  number: number
}

function inNamedRows(positions: readonly string[]): ProposedLayout | null {
  const numbered = positions.flatMap(numberedOf)
  if (numbered.length === 0 || numbered.length < positions.length) return null
  const named = [...new Set(numbered.map(({ row }) => row))]
  // As many rows as positions is no pattern: `left1 right1`.
  if (named.length > MOST_ACROSS || (named.length > 1 && named.length === positions.length)) return null
  const isLettered = named.length > 1 && areLettersInOrder(named)
  const rows = isLettered ? named.toSorted() : named
  const columns = columnsOf(numbered)
  if (!columns) return null
  const places = numbered.map(({ position, row, number }) => ({
    position,
    x: columns.get(number) ?? 0,
    y: rows.indexOf(row),
  }))
  if (hasTwoInOne(places)) return null
  if (rows.length === 1) return { layout: { shape: 'row', places }, rule: { rule: 'numbered-row' } }
  return {
    layout: { shape: 'grid', places },
    rule: { rule: isLettered ? 'lettered-rows' : 'named-rows', rows },
  }
}

function numberedOf(position: string): Numbered[] {
  const match = /^(\D*)(\d{1,6})(\D*)$/.exec(position)
  if (!match) return []
  const [, before = '', digits = '', after = ''] = match
  return [{ position, row: before + after, number: Number(digits) }]
}

/** Neighbours in the alphabet, in whatever order: I and E only name what they stand for. */
function areLettersInOrder(rows: readonly string[]): boolean {
  const sorted = rows.toSorted()
  return sorted.every(
    (row, index) => /^[A-Z]$/i.test(row) && row.charCodeAt(0) === (sorted[0]?.charCodeAt(0) ?? 0) + index,
  )
}

/** The column of each number: as far apart as the numbers, or side by side where that is too far. */
function columnsOf(numbered: readonly Numbered[]): Map<number, number> | null {
  const numbers = [...new Set(numbered.map(({ number }) => number))]
  const isDescending = numbers.every((number, index) => index === 0 || number < (numbers[index - 1] ?? 0))
  const sorted = numbers.toSorted((a, b) => a - b)
  const [first = 0] = sorted
  const last = sorted.at(-1) ?? first
  const isSpread = last - first >= MOST_ACROSS
  if (isSpread && sorted.length > MOST_ACROSS) return null
  const column = (number: number) => (isSpread ? sorted.indexOf(number) : number - first)
  const width = column(last)
  // Whoever writes 4..1 means 4 on the left.
  return new Map(numbers.map((number) => [number, isDescending ? width - column(number) : column(number)]))
}

function hasTwoInOne(places: readonly PlacedPosition[]): boolean {
  return new Set(places.map(({ x, y }) => `${x},${y}`)).size < places.length
}

function asGiven(positions: readonly string[]): ProposedLayout {
  if (positions.length <= MOST_ACROSS) {
    return { layout: inRows(positions, MOST_ACROSS), rule: { rule: 'as-given' } }
  }
  const rows = Math.ceil(positions.length / MOST_ACROSS)
  const columns = Math.ceil(positions.length / rows)
  return { layout: inRows(positions, columns), rule: { rule: 'wrapped', columns } }
}
