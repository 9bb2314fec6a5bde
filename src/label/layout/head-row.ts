import type { Shape } from '../drawing.ts'
import type { ContainerLabel } from '../label-content.ts'
import type { Typeface } from '../typeface.ts'
import { type Column, spanAt } from './column.ts'
import { shorten } from './shorten.ts'
import { armEm, ascent, firstAscent, handEm, pitch, sizesDown } from './type-sizes.ts'

export interface HeadRow {
  shapes: Shape[]
  bottom: number
  shortened: boolean
}

/** `BAG 3  1 of 2` and the status in a box at the right end, on a row of its own where there is no room for both. */
export function headRow(
  content: ContainerLabel,
  column: Column,
  largest: number,
  typeface: Typeface,
): HeadRow | null {
  const sizes = sizesDown(Math.max(largest, armEm), armEm)
  for (const [n, size] of sizes.entries()) {
    const row = headRowOf(content, column, size, typeface, n >= (sizes.length - 1) / 3)
    if (row) return { ...row, shortened: false }
  }
  const fits = (heading: string) => headRowOf({ ...content, heading }, column, armEm, typeface, true)
  const heading = shorten(content.heading, (candidate) => fits(candidate) !== null)
  // Kind and number are what it is found by: the name goes before them, and then which of how many.
  const bare = content.heading.split(' ', 2).join(' ')
  const row =
    (heading === null ? null : fits(heading)) ??
    fits(bare) ??
    headRowOf({ ...content, heading: bare, part: null }, column, armEm, typeface, true)
  return row && { ...row, shortened: true }
}

function headRowOf(
  { heading, part, status }: ContainerLabel,
  column: Column,
  size: number,
  typeface: Typeface,
  inTwoRows: boolean,
): { shapes: Shape[]; bottom: number } | null {
  const top = column.area.y
  const minor = Math.max(size * 0.62, handEm)
  const gap = size * 0.4
  const bottom = top + size * (firstAscent(size) + pitch - ascent)
  const span = spanAt(column, top, bottom + ruleWidth)
  const headingWidth = typeface.widthOf(heading, size, 'strong')
  const taken = headingWidth + (part === null ? 0 : typeface.widthOf(part, minor, 'strong') + gap)
  if (taken > span.width) return null
  const baseline = top + firstAscent(size) * size
  const shapes: Shape[] = [{ kind: 'text', x: span.x, y: baseline, size, weight: 'strong', text: heading }]
  if (part !== null) {
    const x = span.x + headingWidth + gap
    shapes.push({ kind: 'text', x, y: baseline, size: minor, weight: 'strong', text: part })
  }
  if (status === '') return ruled(shapes, span, bottom)
  const boxWidth = typeface.widthOf(status, minor, 'strong') + 2 * statusPad(minor)
  if (taken + gap + boxWidth <= span.width) {
    const x = span.x + span.width - boxWidth
    shapes.push(...statusBox(status, x, baseline, minor, boxWidth))
    return ruled(shapes, span, bottom)
  }
  const height = minor * statusHeight + statusLine
  const second = spanAt(column, bottom, bottom + height)
  if (!inTwoRows || boxWidth > second.width) return null
  shapes.push(...statusBox(status, second.x, bottom + statusLine / 2 + minor, minor, boxWidth))
  return { shapes, bottom: bottom + height }
}

/** A line under the row, from side to side. */
function ruled(
  shapes: Shape[],
  { x, width }: { x: number; width: number },
  bottom: number,
): { shapes: Shape[]; bottom: number } {
  const y = bottom + ruleWidth / 2
  const line: Shape = { kind: 'line', from: { x, y }, to: { x: x + width, y }, width: ruleWidth }
  return { shapes: [...shapes, line], bottom: bottom + ruleWidth }
}

/** The status in a box that is so wide with its outline. */
function statusBox(text: string, x: number, baseline: number, size: number, width: number): Shape[] {
  const box = { x: x + statusLine / 2, y: baseline - size, width: width - statusLine }
  return [
    { kind: 'box', ...box, height: size * statusHeight, corner: 0.4, line: statusLine },
    { kind: 'text', x: x + statusPad(size), y: baseline, size, weight: 'strong', text },
  ]
}

function statusPad(size: number): number {
  return size * 0.3 + statusLine
}

const statusLine = 0.3
const statusHeight = 1.28
// Two dots at 203 dpi, so that every printer prints it.
const ruleWidth = 0.25
