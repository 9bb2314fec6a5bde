import type { LayoutShape } from '../position-layout/position-layout.ts'
import { roundPicture } from './circle.ts'
import type { LayoutDrawing, Room } from './drawing.ts'
import { type CellPlace, setInRows } from './drawn-cell.ts'
import { fitColumns } from './fit-columns.ts'

type Draw = (places: readonly CellPlace[], room: Room) => LayoutDrawing | null

/** How a layout of a shape is drawn with each position where it lies; null where the width is not enough. */
export function wholePicture(shape: LayoutShape): Draw {
  if (shape === 'circle') return roundPicture
  return (places, room) => {
    const cells = squarely(places, room.width, textRows(places, room.height))
    return cells && { rows: setInRows(cells), form: 'whole' }
  }
}

/** Places in columns, as far apart as they are on the machine while there is room, each in its row of text. */
export function squarely(
  places: readonly CellPlace[],
  width: number,
  rows: ReadonlyMap<number, number>,
  spare = SPARE,
): { cell: CellPlace; column: number; row: number }[] | null {
  const cells = places.map((cell) => ({ cell, row: rows.get(cell.y) ?? 0 }))
  const fitted = cells.map(({ cell, row }) => ({ x: cell.x, row, width: cell.width }))
  const columns = fitColumns(fitted, evenColumns(places, width, spare), width)
  return columns && cells.map(({ cell, row }) => ({ cell, row, column: columns.get(cell.x) ?? 0 }))
}

/** Columns between two neighbours beyond the widest cell, where there is room for them. */
const SPARE = 3

/** Columns in proportion to x. */
function evenColumns(places: readonly CellPlace[], width: number, spare: number): Map<number, number> {
  const xs = places.map(({ x }) => x)
  const first = Math.min(...xs)
  const across = Math.max(...xs) - first
  const widest = Math.max(...places.map((place) => place.width))
  const room = across === 0 ? 0 : (width - widest) / across
  const pitch = Math.min(room >= 1 ? Math.floor(room) : room, widest + spare)
  return new Map(xs.map((x) => [x, (x - first) * pitch]))
}

/** The row of text for each y: an empty row of the outline stays one, and rows are set apart where there is room. */
export function textRows(places: readonly CellPlace[], height: number): Map<number, number> {
  const ys = [...new Set(places.map(({ y }) => y))].toSorted((a, b) => a - b)
  const gaps = ys.slice(1).map((y, index) => y - (ys[index] ?? 0))
  const least = Math.min(...gaps)
  const tall = Math.max(...places.map(({ lines }) => lines.length))
  const at = (apart: number) => {
    let row = 0
    return ys.map((_, index) => {
      if (index > 0) row += tall + apart + ((gaps[index - 1] ?? 0) >= 2 * least ? 1 : 0)
      return row
    })
  }
  const airy = at(1)
  const rows = (airy.at(-1) ?? 0) + tall <= height ? airy : at(0)
  return new Map(ys.map((y, index) => [y, rows[index] ?? 0]))
}
