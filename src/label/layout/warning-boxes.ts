import type { Shape } from '../drawing.ts'
import { type Box, between, bottomOf, type Column } from './column.ts'
import { fitText, type SetLine, type Style } from './fit-text.ts'
import { pitch } from './type-sizes.ts'

/**
 * Cautions, white on black behind a `!`, each in at most so many lines; with none allowed, only how many there are.
 * Null when they do not fit.
 */
export function warningBoxes(
  warnings: readonly string[],
  style: Style,
  column: Column,
  most: number,
): { shapes: Shape[]; bottom: number; shortened: boolean } | null {
  const texts = most > 0 ? warnings.map((warning) => `! ${warning}`) : [`! × ${warnings.length}`]
  const padded = { ...style, pad: style.size * sidePad }
  const shapes: Shape[] = []
  let rest = column
  let shortened = most === 0 && warnings.length > 0
  for (const text of warnings.length > 0 ? texts : []) {
    const below = between(rest, rest.area.y + gap, bottomOf(rest))
    const set = fitText(text, padded, below, Math.max(most, 1))
    if (!set) return null
    shortened ||= set.shortened
    shapes.push(...reversedLines(set.lines, padded))
    rest = between(rest, set.bottom, bottomOf(rest))
  }
  return { shapes, bottom: rest.area.y, shortened }
}

/**
 * Lines of text white on black. The ground is one box for all lines below each other in the same span: as wide as the
 * widest of them, or as the span.
 */
export function reversedLines(
  lines: readonly SetLine[],
  { size, weight, pad = 0 }: Style,
  across = false,
): Shape[] {
  const grounds: Box[] = []
  for (const [n, { span, top, width }] of lines.entries()) {
    const wide = across ? span.width : width + 2 * pad
    const above = grounds.at(-1)
    const last = lines[n - 1]?.span
    const isBelow = last?.x === span.x && last.width === span.width
    if (above && isBelow && Math.abs(above.y + above.height - top) < 0.01) {
      above.height += size * pitch
      above.width = Math.max(above.width, wide)
    } else grounds.push({ x: span.x, y: top, width: wide, height: size * pitch })
  }
  return [
    ...grounds.map((ground): Shape => ({ kind: 'box', ...ground, line: 0, filled: true })),
    ...lines.map(
      ({ text, x, baseline }): Shape => ({
        kind: 'text',
        x,
        y: baseline,
        size,
        weight,
        text,
        reversed: true,
      }),
    ),
  ]
}

const sidePad = 0.3
const gap = 0.4
