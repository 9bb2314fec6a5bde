import { type Drawing, moved } from './drawing.ts'
import { labelsOnPage, type Stock } from './stock.ts'

export interface SheetUse {
  /** The first label to use on the first page, counted from 1 by rows. */
  from: number
  /** Millimetres to the right and down, for a printer that shifts. */
  shift: { x: number; y: number }
}

export type SheetRefusal =
  /** The page has no label of that number. */
  { code: 'no-such-label'; from: number; most: number } | { code: 'shift-too-far'; most: number }

/** Where a label lies: its page from 0, its top left corner in millimetres from that of the page. */
export interface Placement {
  page: number
  x: number
  y: number
}

// A printer that is off by more has a wrong paper size set, which no shift mends. Common practice.
const farthestShift = 20

/** Where so many labels lie, row by row, from the label `from` of a first page that was used up to there. */
export function placements(
  stock: Stock,
  count: number,
  { from, shift }: SheetUse,
): { ok: true; placements: Placement[] } | { ok: false; refusal: SheetRefusal } {
  const perPage = labelsOnPage(stock)
  if (!Number.isInteger(from) || from < 1 || from > perPage) {
    return { ok: false, refusal: { code: 'no-such-label', from, most: perPage } }
  }
  if (!(Math.abs(shift.x) <= farthestShift && Math.abs(shift.y) <= farthestShift)) {
    return { ok: false, refusal: { code: 'shift-too-far', most: farthestShift } }
  }
  const at = (place: number): Placement => {
    const corner = cornerOf(stock, place % perPage)
    return { page: Math.floor(place / perPage), x: corner.x + shift.x, y: corner.y + shift.y }
  }
  return { ok: true, placements: Array.from({ length: count }, (_, index) => at(from - 1 + index)) }
}

/** Puts labels on as many pages as they need; no label, no page. */
export function sheetPages(
  stock: Stock,
  labels: readonly Drawing[],
  use: SheetUse,
): { ok: true; pages: Drawing[] } | { ok: false; refusal: SheetRefusal } {
  const placed = placements(stock, labels.length, use)
  if (!placed.ok) return placed
  const pages: Drawing[] = []
  for (const [index, { page, x, y }] of placed.placements.entries()) {
    if (page === pages.length) pages.push({ ...stock.page, shapes: [] })
    pages[page]?.shapes.push(...moved(labels[index] as Drawing, x, y).shapes)
  }
  return { ok: true, pages }
}

/** The top left corner of a label on its page, labels counted from 0 by rows. In millimetres. */
export function cornerOf({ columns, label, margin, gap }: Stock, place: number): { x: number; y: number } {
  return {
    x: margin.left + (place % columns) * (label.width + gap.x),
    y: margin.top + Math.floor(place / columns) * (label.height + gap.y),
  }
}
