import type { Shape } from '../drawing.ts'
import type { BlankLabel } from '../label-content.ts'
import { type Box, type Column, spanAt } from './column.ts'
import { frame } from './frame.ts'
import type { About, Sketch } from './laid.ts'
import type { SymbolSpots } from './symbol-spots.ts'
import { armEm } from './type-sizes.ts'

/** A number on paper and lines to write on by hand. Null when there is room for neither a code nor a line. */
export function sketchBlank(
  { code, job }: BlankLabel,
  area: Box,
  spots: SymbolSpots,
  { typeface }: About,
): Sketch | null {
  const footer = { start: job, end: '' }
  const sketches = [0.26, 0.2, 0].flatMap((part) => {
    const largestCode = Math.max(armEm * 1.2, Math.min(area.height * part, 16))
    const base = frame(area, spots, { code, footer, largestCode }, typeface)
    return base ? [{ base, lines: ruledLines(base.free) }] : []
  })
  // The digits give way to a second line to write on, not to a third.
  const [first] = sketches.sort((a, b) => Math.min(2, b.lines.length) - Math.min(2, a.lines.length))
  if (!first || first.lines.length === 0) return null
  return {
    shapes: [...first.base.shapes, ...first.lines],
    shortened: first.base.footerShortened ? ['job'] : [],
  }
}

function ruledLines(free: Column): Shape[] {
  const room = free.area.height - clearance
  const count = Math.max(Math.floor(room / comfortable), Math.min(2, Math.floor(room / narrow)))
  const step = room / count
  const rules: Shape[] = []
  for (let n = 1; n <= count; n++) {
    const y = free.area.y + n * step
    const { x, width } = spanAt(free, y - narrow * 0.7, y + clearance)
    if (width < shortest) continue
    rules.push({ kind: 'line', from: { x, y }, to: { x: x + width, y }, width: 0.25 })
  }
  return rules
}

// Ruled school paper has 8 or 9 mm from line to line; just under 6 mm still takes a marker's small hand. Common practice.
const comfortable = 6.8
const narrow = 5.8
const shortest = 14
const clearance = 0.8
