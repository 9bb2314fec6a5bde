import { drawLayout, listPositions } from '../../trade/position-drawing/draw-layout.ts'
import type { Cell } from '../../trade/position-drawing/drawn-cell.ts'
import type { PositionLayout } from '../../trade/position-layout/position-layout.ts'
import { formNote } from '../../words/position-drawing.ts'
import { blank, drawn, type Line, strong, widthOf } from '../text/line.ts'
import { indented } from './rows.ts'

/** Rows of a drawing, and what has to be said of how it is drawn. */
export interface DrawnPositions {
  rows: Line[]
  note: Line[]
  form: ReturnType<typeof drawLayout>['form']
  /** The first row with something marked; null where nothing is. */
  markedAt: number | null
}

/** A layout, or a list of positions, in at most so many rows if that can be; what is marked stands out. */
export function positionRows(
  layout: PositionLayout | readonly string[],
  cells: ReadonlyMap<string, Cell>,
  { width, height }: { width: number; height: number },
): DrawnPositions {
  const { rows, form } =
    'places' in layout
      ? drawLayout(layout, cells, { width, height })
      : listPositions(layout, cells, { width, height })
  const widest = Math.max(0, ...rows.map((row) => widthOf(row.map(({ text }) => text).join(''))))
  const indent = Math.min(INDENT, width - widest)
  const note = 'places' in layout ? formNote(form) : null
  return {
    rows: rows.map((row) =>
      row.length === 0
        ? blank
        : [
            drawn(' '.repeat(indent)),
            ...row.map(({ text, isMarked }) => (isMarked ? strong(text) : drawn(text))),
          ],
    ),
    note: note === null ? [] : indented(note, width),
    form,
    markedAt: indexOrNull(rows.findIndex((row) => row.some(({ isMarked }) => isMarked))),
  }
}

function indexOrNull(index: number): number | null {
  return index < 0 ? null : index
}

/** As far in as other rows under a heading, as long as the drawing leaves room for that. */
const INDENT = 4
