import type { Shape } from '../drawing.ts'
import { between, bottomOf, type Column } from './column.ts'
import { fitText, type Style } from './fit-text.ts'
import { ascent, pitch } from './type-sizes.ts'

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
    for (const line of set.lines) shapes.push(...reversedLine(line, padded))
    rest = between(rest, set.bottom, bottomOf(rest))
  }
  return { shapes, bottom: rest.area.y, shortened }
}

/** A line of text white on a black ground, which is as wide as the line or, where that is said, as the column. */
export function reversedLine(
  line: {
    text: string
    x: number
    baseline: number
    width: number
    top: number
    span: { x: number; width: number }
  },
  { size, weight, pad = 0 }: Style,
  across = false,
): Shape[] {
  const x = across ? line.span.x : line.x - pad
  const width = across ? line.span.width : line.width + 2 * pad
  return [
    { kind: 'box', x, y: line.top, width, height: size * pitch, line: 0, filled: true },
    { kind: 'text', x: line.x, y: line.top + ascent * size, size, weight, text: line.text, reversed: true },
  ]
}

const sidePad = 0.3
const gap = 0.4
