import type { Shape } from '../drawing.ts'
import type { MachineTag } from '../label-content.ts'
import { type Box, between, bottomOf, type Column } from './column.ts'
import type { Sketch } from './container.ts'
import { fitText, type Style, setText } from './fit-text.ts'
import { frame, textShapes } from './frame.ts'
import type { About, Part } from './laid.ts'
import type { SymbolSpots } from './symbol-spots.ts'
import { armEm, handEm, sizesDown } from './type-sizes.ts'
import { reversedLine } from './warning-boxes.ts'

/** Hangs on the machine: its state across the top, white on black, as large as it goes; then why. */
export function sketchMachineTag(
  { code, state, reasons, machine, job, date }: MachineTag,
  area: Box,
  spots: SymbolSpots,
  { typeface }: About,
): Sketch | null {
  const largestCode = Math.min(area.height * 0.2, 16)
  const base = frame(area, spots, { code, footer: { start: job, end: date }, largestCode }, typeface)
  if (!base) return null
  const state_ = stateBand()
  return state_ && { ...state_, shapes: [...base.shapes, ...state_.shapes] }

  function stateBand(): Sketch | null {
    const { free, footerShortened } = base as NonNullable<typeof base>
    const height = bottomOf(free) - free.area.y
    for (const size of sizesDown(Math.max(height * 0.3, armEm), armEm)) {
      const style: Style = { typeface, size, weight: 'strong', pad: size * 0.25 }
      const set = setText(state, style, free)
      if (!set || set.bottom - free.area.y > Math.max(height * 0.55, armEm * 1.2) || broken(set.lines))
        continue
      const rest = between(free, set.bottom + size * 0.15, bottomOf(free))
      const body = reasonsBelow(rest, Math.min(size * 0.7, 14))
      if (!body) continue
      const shortened: Part[] = footerShortened ? ['job', ...body.shortened] : body.shortened
      return {
        shapes: [...set.lines.flatMap((line) => reversedLine(line, style, true)), ...body.shapes],
        shortened,
      }
    }
    return null
  }

  // A state broken within a word is no state to be read from afar.
  function broken(lines: readonly { text: string }[]): boolean {
    return lines.map((line) => line.text).join(' ') !== state
  }

  function reasonsBelow(column: Column, largest: number): Sketch | null {
    const sizes = sizesDown(Math.max(largest, handEm), handEm)
    for (const size of sizes) {
      const body = texts(column, size, reasons.length, false)
      if (body) return body
    }
    for (let kept = reasons.length; kept >= 0; kept--) {
      const body = texts(column, handEm, kept, true)
      if (body) return body
    }
    return null
  }

  function texts(column: Column, size: number, kept: number, cut: boolean): Sketch | null {
    const strong: Style = { typeface, size, weight: 'strong' }
    const plain: Style = { typeface, size: Math.max(handEm, size * 0.7), weight: 'plain' }
    const left = reasons.length - kept
    const rows: [Part, string, Style][] = [
      ...reasons.slice(0, kept).map((reason): [Part, string, Style] => ['reasons', reason, strong]),
      ...(left > 0 ? [['reasons', `and ${left} more`, strong] as [Part, string, Style]] : []),
      ...(machine === '' ? [] : [['machine', machine, plain] as [Part, string, Style]]),
    ]
    const shapes: Shape[] = []
    const shortened = new Set<Part>(left > 0 ? ['reasons'] : [])
    let rest = column
    for (const [part, text, style] of rows) {
      const set = fitText(text, style, rest, cut ? 1 : 3)
      if (!set || (set.shortened && !cut)) return null
      if (set.shortened) shortened.add(part)
      shapes.push(...textShapes(set.lines, style))
      rest = between(rest, set.bottom, bottomOf(rest))
    }
    return { shapes, shortened: [...shortened] }
  }
}
