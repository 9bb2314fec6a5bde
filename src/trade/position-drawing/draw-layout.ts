import type { PositionLayout } from '../position-layout/position-layout.ts'
import type { LayoutDrawing, Room } from './drawing.ts'
import { type Cell, type CellForm, drawnCell } from './drawn-cell.ts'
import { listOf } from './list.ts'
import { wholePicture } from './picture.ts'
import { wrappedPicture } from './wrapped.ts'

/**
 * Draws positions as text, each once as its name with what its cell says. No row is wider than the room; where nothing
 * fits its height, one of those with few rows is given. In a drawing as a whole and in each part of a wrapped
 * one, what lies left of another or above it is drawn so.
 */
export function drawLayout(
  layout: PositionLayout,
  cells: ReadonlyMap<string, Cell>,
  room: Room,
): LayoutDrawing {
  if (layout.places.length === 0) return NOTHING
  const forms = FORMS.map((form) =>
    layout.places.map((place) => ({
      ...place,
      ...drawnCell(place.position, cells.get(place.position), form, room.width),
    })),
  )
  const drawings: LayoutDrawing[] = []
  for (const draw of [wholePicture(layout.shape), wrappedPicture(layout.shape), listOf]) {
    for (const places of forms) {
      const drawing = draw(places, room)
      if (drawing && drawing.rows.length <= room.height) return drawing
      if (drawing) drawings.push(drawing)
    }
  }
  const fewest = Math.min(...drawings.map(({ rows }) => rows.length))
  return drawings.find(({ rows }) => rows.length <= MOST_TO_SCROLL * fewest) ?? drawings[0] ?? NOTHING
}

/** A truer drawing may be so many times as long as the shortest, where neither fits. */
const MOST_TO_SCROLL = 2

const NOTHING: LayoutDrawing = { rows: [], form: 'whole' }

/** Positions of which nobody knows how they lie: no more than a list, in the order given. */
export function listPositions(
  positions: readonly string[],
  cells: ReadonlyMap<string, Cell>,
  room: Room,
): LayoutDrawing {
  if (positions.length === 0) return NOTHING
  const lists = (['roomy', 'tight'] as const).map((form) =>
    listOf(
      positions.map((position) => ({
        position,
        x: 0,
        y: 0,
        ...drawnCell(position, cells.get(position), form, room.width),
      })),
      room,
    ),
  )
  return lists.find(({ rows }) => rows.length <= room.height) ?? lists.at(-1) ?? NOTHING
}

/** From the clearest to the narrowest. */
const FORMS: readonly CellForm[] = ['roomy', 'tight', 'stacked']
