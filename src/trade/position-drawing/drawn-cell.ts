import { columnsOf, headOf } from './text-columns.ts'

/** What a drawing says at a position besides its name. */
export interface Cell {
  /** A sign or a short value: `✓`, `M6x40`, `←`. */
  says?: string | undefined
  /** Whether it is the one to look for: in brackets, or behind `>` where it is narrow. */
  isMarked?: boolean | undefined
}

export interface DrawnSpan {
  text: string
  /** The position that it belongs to; null for what stands between. */
  position: string | null
  isMarked: boolean
}

/** A row of a drawing; the texts of its spans joined are the row. */
export type DrawnRow = readonly DrawnSpan[]

/** `roomy`: `[A3 ✓]`; `tight`: `>A3✓`; `stacked`: the sign in a row of its own under the name. */
export type CellForm = 'roomy' | 'tight' | 'stacked'

/** A cell ready to be set, its rows equally wide. The first column is room for the mark. */
export interface DrawnCell {
  lines: string[]
  width: number
  isMarked: boolean
}

/** The cell of a position in a form, in at most so many columns. */
export function drawnCell(
  position: string,
  { says = '', isMarked = false }: Cell = {},
  form: CellForm,
  most: number,
): DrawnCell {
  const lines = linesOf(position, says, isMarked, form).map((text) => headOf(text, most))
  return filledUp({ lines, width: Math.max(...lines.map(columnsOf)), isMarked })
}

/** Cells that all are as wide as the widest. */
export function equallyWide(cells: readonly CellPlace[]): CellPlace[] {
  const width = Math.max(...cells.map((cell) => cell.width))
  return cells.map((cell) => filledUp({ ...cell, width }))
}

function filledUp<Sized extends DrawnCell>(cell: Sized): Sized {
  const { lines, width } = cell
  return { ...cell, lines: lines.map((text) => text + ' '.repeat(width - columnsOf(text))) }
}

function linesOf(position: string, says: string, isMarked: boolean, form: CellForm): string[] {
  const mark = isMarked ? '>' : ' '
  switch (form) {
    case 'roomy': {
      const text = says === '' ? position : `${position} ${says}`
      return [isMarked ? `[${text}]` : ` ${text} `]
    }
    case 'tight':
      // A letter or digit would be read as part of the name.
      return [`${mark}${position}${/^[\p{L}\p{N}_]/u.test(says) ? ' ' : ''}${says}`]
    case 'stacked':
      return [`${mark}${position}`, ` ${says}`]
    default:
      return form satisfies never
  }
}

/** A place with the cell that is drawn there. */
export interface CellPlace extends DrawnCell {
  position: string
  x: number
  y: number
}

/** Puts cells into rows of text. `column` and `row` are those of each cell's first character. */
export function setInRows(cells: readonly { cell: CellPlace; column: number; row: number }[]): DrawnRow[] {
  const height = Math.max(...cells.map(({ cell, row }) => row + cell.lines.length))
  const rows: { column: number; text: string; cell: CellPlace }[][] = Array.from({ length: height }, () => [])
  for (const { cell, column, row } of cells) {
    for (const [index, text] of cell.lines.entries()) rows[row + index]?.push({ column, text, cell })
  }
  return rows.map((row) => spansOf(row.toSorted((a, b) => a.column - b.column)))
}

function spansOf(texts: readonly { column: number; text: string; cell: CellPlace }[]): DrawnRow {
  const spans: DrawnSpan[] = []
  let used = 0
  for (const { column, text, cell } of texts) {
    if (column > used) spans.push(between(' '.repeat(column - used)))
    spans.push({ text, position: cell.position, isMarked: cell.isMarked })
    used = column + cell.width
  }
  return spans
}

/** What stands between positions. */
export function between(text: string): DrawnSpan {
  return { text, position: null, isMarked: false }
}
