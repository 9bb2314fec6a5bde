import type { Shape } from '../drawing.ts'
import type { BlankLabel } from '../label-content.ts'
import { type Box, bottomOf, spanAt } from './column.ts'
import type { Sketch } from './container.ts'
import { frame } from './frame.ts'
import type { About } from './laid.ts'
import type { SymbolSpots } from './symbol-spots.ts'

/** A number on paper and lines to write on by hand. Null when there is room for neither a code nor a line. */
export function sketchBlank(
  { code, job }: BlankLabel,
  area: Box,
  spots: SymbolSpots,
  { typeface }: About,
): Sketch | null {
  const largestCode = Math.min(area.height * 0.26, 16)
  const base = frame(area, spots, { code, footer: { start: job, end: '' }, largestCode }, typeface)
  if (!base) return null
  const lines = ruledLines()
  if (lines.length === 0) return null
  return { shapes: [...base.shapes, ...lines], shortened: base.footerShortened ? ['job'] : [] }

  function ruledLines(): Shape[] {
    const { free } = base as NonNullable<typeof base>
    const room = bottomOf(free) - free.area.y
    const step = room >= 3 * comfortable ? comfortable : narrow
    const rules: Shape[] = []
    for (let y = free.area.y + step; y <= bottomOf(free) - 0.6; y += step) {
      const { x, width } = spanAt(free, y - step * 0.7, y + 0.3)
      if (width < shortest) continue
      rules.push({ kind: 'line', from: { x, y }, to: { x: x + width, y }, width: 0.25 })
    }
    return rules
  }
}

// Ruled school paper has 8 or 9 mm from line to line; 6 mm still takes a marker's small hand. Common practice.
const comfortable = 7.5
const narrow = 6
const shortest = 14
