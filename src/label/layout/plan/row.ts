import { moved, type Shape, type Weight } from '../../drawing.ts'
import type { Typeface } from '../../typeface.ts'
import { ascent, pitch } from '../type-sizes.ts'
import { wrap } from './wrap.ts'

/** A strip of the page from side to side, its shapes drawn from its top; pages are cut between rows. */
export interface Row {
  height: number
  shapes: Shape[]
  /** Stays on one page with the row after it. */
  keep: boolean
  /** What it is a part of, said again where a page begins with it. */
  of?: string | undefined
}

/** Where things stand on the page from left to right, in millimetres, and what they are set in. */
export interface Sheet {
  typeface: Typeface
  dpi: number
  left: number
  right: number
}

export interface Cell {
  x: number
  width: number
  size: number
  weight?: Weight | undefined
}

/** Sizes of type, as the em in millimetres. */
export const ems = { title: 6.4, heading: 4.4, text: 3.1, small: 2.6 } as const

/** A line of a cell: its baseline counts from the top of the cell. */
export interface CellLine {
  text: string
  x: number
  baseline: number
  width: number
}

/** The lines of a text, broken to the width of a cell; nothing is cut. */
export function linesOf(sheet: Sheet, text: string, { x, width, size, weight = 'plain' }: Cell): CellLine[] {
  const widthOf = (part: string) => sheet.typeface.widthOf(part, size, weight)
  return wrap(text, width + hair, widthOf).map((line, index) => ({
    text: line,
    x,
    baseline: (ascent + index * pitch) * size,
    width: widthOf(line),
  }))
}

// Widths are sums that round off: a cell as wide as its text holds it.
const hair = 0.001

/** Lines of a cell as shapes, the first one's top at `top`. */
export function lineShapes(lines: readonly CellLine[], { size, weight = 'plain' }: Cell, top = 0): Shape[] {
  return lines.map(({ text, x, baseline }) => ({ kind: 'text', x, y: baseline + top, size, weight, text }))
}

/** How high so many lines stand. */
export function heightOf(lines: number, size: number): number {
  return lines * size * pitch
}

/** A text in rows of one line each; all but the last are kept with the next where that is asked. */
export function textRows(sheet: Sheet, text: string, cell: Cell, keep = true): Row[] {
  return linesOf(sheet, text, cell).map((line, index, all) => ({
    height: heightOf(1, cell.size),
    shapes: lineShapes([{ ...line, baseline: ascent * cell.size }], cell),
    keep: keep || index < all.length - 1,
  }))
}

/** A caution, white on black behind a `!`, in rows of one line. */
export function cautionRows(sheet: Sheet, text: string, { x, width, size }: Cell): Row[] {
  const pad = size * 0.3
  const cell: Cell = { x: x + pad, width: width - 2 * pad, size, weight: 'strong' }
  const height = heightOf(1, size)
  return linesOf(sheet, `! ${text}`, cell).map((line) => ({
    height: height + 0.3,
    shapes: [
      { kind: 'box', x, y: 0, width: line.width + 2 * pad, height, line: 0, filled: true },
      { kind: 'text', x: line.x, y: ascent * size, size, weight: 'strong', text: line.text, reversed: true },
    ],
    keep: true,
  }))
}

/** Rows side by side: the first with the first, and so on; those that are left over stand alone. */
export function besideEachOther(one: readonly Row[], other: readonly Row[]): Row[] {
  return Array.from({ length: Math.max(one.length, other.length) }, (_, index) => {
    const [a, b] = [one[index], other[index]]
    return {
      height: Math.max(a?.height ?? 0, b?.height ?? 0),
      shapes: [...(a?.shapes ?? []), ...(b?.shapes ?? [])],
      keep: (a?.keep ?? false) || (b?.keep ?? false) || index < Math.max(one.length, other.length) - 1,
    }
  })
}

/** Rows that are one to the next, the last of them free to end a page. */
export function closed(rows: readonly Row[]): Row[] {
  return rows.map((row, index) => (index === rows.length - 1 ? { ...row, keep: false } : row))
}

/** Rows of one thing: all but the first say what it is, should a page begin with them. */
export function partsOf(what: string, rows: readonly Row[]): Row[] {
  return rows.map((row, index) => (index === 0 ? row : { ...row, of: what }))
}

/** The row with more room above and below. */
export function spaced(row: Row, above: number, below = 0): Row {
  return { ...row, height: above + row.height + below, shapes: shifted(row.shapes, above) }
}

/** Room alone. */
export function spaceRow(height: number, keep = false): Row {
  return { height, shapes: [], keep }
}

/** Shapes moved down. */
export function shifted(shapes: readonly Shape[], down: number): Shape[] {
  return moved({ width: 0, height: 0, shapes: [...shapes] }, 0, down).shapes
}

/** A word in a frame, dark on white or white on dark; its height is that of a line of small type and a little more. */
export function chip(
  { typeface }: Sheet,
  text: string,
  at: { x: number; y: number },
  filled: boolean,
): { shapes: Shape[]; width: number } {
  const size = ems.small
  const width = typeface.widthOf(text, size, 'strong') + 2.4
  const { x, y } = at
  return {
    width,
    shapes: [
      { kind: 'box', x, y, width, height: chipHeight, line: filled ? 0 : 0.25, corner: 0.8, filled },
      { kind: 'text', x: x + 1.2, y: y + 2.95, size, weight: 'strong', text, reversed: filled || undefined },
    ],
  }
}

export const chipHeight = 4
