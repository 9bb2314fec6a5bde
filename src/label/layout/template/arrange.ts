import type { Point } from '../../drawing.ts'
import { bestCell, type Cell, type CellNeeds } from './cell.ts'

/** Where positions lie, in the units of a layout; `circle` on the unit circle, all others in columns and rows. */
export interface LayoutOnSheet {
  shape: 'row' | 'grid' | 'circle' | 'free'
  places: readonly { position: string; x: number; y: number }[]
}

export interface Arranged {
  cell: Cell
  /** The places in millimetres, in the order of the layout, around nothing in particular. */
  points: Point[]
  /** Millimetres between neighbouring columns and rows; on a circle along the chord, twice the same. */
  spacing: { x: number; y: number }
}

/** Free paper between cells; more below a cell, where the next begins with a name that is not of this one. */
const apart = { x: 2, y: 3.5 }
/** No farther than this between neighbours on a sheet that is not full size. */
const farthest = { x: 74, y: 66 }
/** No cell is so small. */
const closest = 4
const sizesTried = 40
const roomsTried = 14

/**
 * Spreads a layout over a field, with the cells as good as they get, or at a given pitch in millimetres between
 * neighbours. Null where the smallest cells do not fit.
 */
export function arranged(
  layout: LayoutOnSheet,
  needs: CellNeeds,
  field: { width: number; height: number },
  pitch: number | null,
): Arranged | null {
  let best: Arranged | null = null
  for (const spacing of spacings(layout, field, pitch)) {
    if (layout.places.length > 1 && Math.max(spacing.x, spacing.y) < closest) continue
    const points = pointsAt(layout, spacing)
    const span = spanOf(points)
    for (const room of rooms(points, { width: field.width - span.x, height: field.height - span.y })) {
      const cell = bestCell(needs, room.width, room.height)
      if (cell && cell.merit > (best?.cell.merit ?? 0)) best = { cell, points, spacing }
    }
  }
  return best
}

/** The distances between neighbours worth trying; the largest first, for what is wide apart is easily told apart. */
function spacings(
  { shape, places }: LayoutOnSheet,
  field: { width: number; height: number },
  pitch: number | null,
): Arranged['spacing'][] {
  if (pitch !== null) return [{ x: pitch, y: pitch }]
  const span = spanOf(places)
  if (shape !== 'circle') {
    return [
      {
        x: Math.min(farthest.x, (field.width + apart.x) / (span.x + 1)),
        y: Math.min(farthest.y, (field.height + apart.y) / (span.y + 1)),
      },
    ]
  }
  const widest = (Math.min(field.width, field.height) * chordOf(places.length)) / 2
  return Array.from({ length: sizesTried }, (_, index) => {
    const chord = Math.min(farthest.x, (widest * (sizesTried - index)) / sizesTried)
    return { x: chord, y: chord }
  })
}

/** The places in millimetres. */
function pointsAt({ shape, places }: LayoutOnSheet, spacing: Arranged['spacing']): Point[] {
  const unit = shape === 'circle' ? 1 / chordOf(places.length) : 1
  return places.map(({ x, y }) => ({ x: x * spacing.x * unit, y: y * spacing.y * unit }))
}

/** Between neighbours on a circle of radius 1. */
function chordOf(count: number): number {
  return count < 2 ? 1 : 2 * Math.sin(Math.PI / count)
}

/** How far points reach from the first to the last. */
export function spanOf(points: readonly Point[]): { x: number; y: number } {
  const reach = (values: number[]) => Math.max(...values) - Math.min(...values)
  return { x: reach(points.map(({ x }) => x)), y: reach(points.map(({ y }) => y)) }
}

/** Widths with the heights that they leave, such that rooms of that size around all points keep apart. */
function rooms(
  points: readonly Point[],
  most: { width: number; height: number },
): { width: number; height: number }[] {
  if (most.width <= 0 || most.height <= 0) return []
  const pairs = points.flatMap((one, index) =>
    points.slice(index + 1).map((other) => ({ x: Math.abs(one.x - other.x), y: Math.abs(one.y - other.y) })),
  )
  return widths(pairs, most.width).flatMap((width) => {
    let height = most.height
    for (const { x, y } of pairs) if (x < width + apart.x - hair) height = Math.min(height, y - apart.y)
    return height > 0 ? [{ width, height }] : []
  })
}

/** Only a width at which two points get past each other is worth trying, and the whole width. */
function widths(pairs: readonly { x: number }[], most: number): number[] {
  const passing = [...new Set(pairs.map(({ x }) => Number((x - apart.x).toFixed(2))))]
    .filter((width) => width > 0 && width < most)
    .sort((a, b) => a - b)
  const every = Math.max(1, Math.ceil(passing.length / roomsTried))
  return [...passing.filter((_, index) => index % every === 0), most]
}

// Distances are compared after rounding.
const hair = 0.01
