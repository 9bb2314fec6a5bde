import type { LayoutDrawing, Room } from './drawing.ts'
import { type CellPlace, setInRows } from './drawn-cell.ts'

/** Positions one after the other in equal columns, in the order in which they are known. */
export function listOf(places: readonly CellPlace[], { width }: Room): LayoutDrawing {
  const pitch = Math.max(...places.map((place) => place.width))
  const perRow = Math.max(1, Math.floor(width / pitch))
  const cells = places.map((cell, index) => ({
    cell,
    column: (index % perRow) * pitch,
    row: Math.floor(index / perRow) * cell.lines.length,
  }))
  return { rows: setInRows(cells), form: 'listed' }
}
