import type { LayoutDrawing, Room } from './drawing.ts'
import { type CellPlace, setInRows } from './drawn-cell.ts'
import { fitColumns } from './fit-columns.ts'

/** A character is about twice as high as it is wide: so many columns look as long as a row is high. */
const COLUMNS_PER_ROW = 2

/** A larger one no longer fits on any screen. */
const MOST_ROWS = 60

/**
 * Positions around a circle: the smallest round one in which each lies where it should, else as high as there is room
 * and so far drawn out in width that all find a place. Null where they do not.
 */
export function roundPicture(places: readonly CellPlace[], room: Room): LayoutDrawing | null {
  // Two rows under each other would be one position or two.
  if (places.some(({ lines }) => lines.length > 1)) return null
  const most = Math.min(room.height, MOST_ROWS)
  for (let height = 1 + 2 * Math.ceil(places.length / 3); height <= most; height += 2) {
    const cells = around(places, room.width, height, COLUMNS_PER_ROW * (height - 1))
    if (cells?.isTrue) return drawing(cells.cells)
  }
  // With an odd number of rows, what lies to the left and to the right has the one in the middle.
  const tallest = most % 2 === 1 ? [most] : [most - 1, most]
  for (const height of tallest) {
    const cells = height < 1 ? null : drawnOut(places, height, room.width)
    if (cells) return drawing(cells)
  }
  return null
}

type SetCells = Parameters<typeof setInRows>[0]

function drawing(cells: SetCells): LayoutDrawing {
  return { rows: setInRows(cells), form: 'whole' }
}

/** No wider than it takes for each to lie where it should, or as wide as there is room. */
function drawnOut(places: readonly CellPlace[], height: number, width: number): SetCells | null {
  const full = width - Math.max(...places.map((place) => place.width))
  let best = around(places, width, height, full)
  let [tooNarrow, enough] = [COLUMNS_PER_ROW * (height - 1), full]
  while (best?.isTrue && enough - tooNarrow > 1) {
    const across = Math.floor((tooNarrow + enough) / 2)
    const cells = around(places, width, height, across)
    if (cells?.isTrue) [best, enough] = [cells, across]
    else tooNarrow = across
  }
  return best?.cells ?? null
}

/** Places around an ellipse so many rows high and columns wide; `isTrue` where none had to give way to another. */
function around(
  places: readonly CellPlace[],
  width: number,
  height: number,
  across: number,
): { cells: SetCells; isTrue: boolean } | null {
  const radius = Math.max(...places.flatMap(({ x, y }) => [Math.abs(x), Math.abs(y)]), Number.EPSILON)
  const along = (value: number, length: number) => ((value / radius + 1) / 2) * length
  const rowOf = (y: number) => Math.round(along(y, height - 1))
  const wished = new Map(places.map(({ x }) => [x, along(x, across)]))
  const columns = fitColumns(
    places.map(({ x, y, width: own }) => ({ x, row: rowOf(y), width: own })),
    wished,
    width,
  )
  if (!columns) return null
  const left = Math.min(...columns.values())
  return {
    cells: places.map((cell) => ({ cell, column: (columns.get(cell.x) ?? 0) - left, row: rowOf(cell.y) })),
    isTrue: [...columns].every(([x, column]) => column === Math.round(wished.get(x) ?? 0)),
  }
}
