import type { Shape } from '../drawing.ts'
import type { MachineTag } from '../label-content.ts'
import { type Box, between, bottomOf, type Column } from './column.ts'
import { fitText, type Style, setText } from './fit-text.ts'
import { frame, textShapes } from './frame.ts'
import type { About, Part, Sketch } from './laid.ts'
import type { SymbolSpots } from './symbol-spots.ts'
import { armEm, handEm, pitch, sizesDown } from './type-sizes.ts'
import { reversedLines } from './warning-boxes.ts'

/** Hangs on the machine: its state across the top, white on black, as large as it goes; then why. */
export function sketchMachineTag(
  { code, state, reasons, machine, job, date }: MachineTag,
  area: Box,
  spots: SymbolSpots,
  { typeface }: About,
): Sketch | null {
  const largestCode = Math.max(4.2, Math.min(area.height * 0.1, 12))
  const base = frame(area, spots, { code, footer: { start: job, end: date }, largestCode }, typeface)
  if (!base) return null
  const state_ = stateBand()
  return state_ && { ...state_, shapes: [...base.shapes, ...state_.shapes] }

  function stateBand(): Sketch | null {
    const { free, footerShortened } = base as NonNullable<typeof base>
    const height = bottomOf(free) - free.area.y
    for (const size of sizesDown(Math.max(height * 0.3, armEm), armEm)) {
      const style: Style = { typeface, size, weight: 'strong', pad: size * 0.25, breaks: false }
      const set = setText(state, style, free)
      if (!set || set.bottom - free.area.y > Math.max(height * 0.55, armEm * pitch * 3)) continue
      const rest = between(free, set.bottom + size * 0.15, bottomOf(free))
      const body = reasonsBelow(rest, Math.min(size * 0.7, 14))
      if (!body) continue
      const shortened: Part[] = footerShortened ? ['job', ...body.shortened] : body.shortened
      return {
        shapes: [...reversedLines(set.lines, style, true), ...body.shapes],
        shortened,
      }
    }
    return null
  }

  // One below the other where there is room; then one after the other; then the first of them.
  function reasonsBelow(column: Column, largest: number): Sketch | null {
    const together = reasons.length > 1 ? [reasons.join(' · ')] : reasons
    for (const rows of [reasons, together]) {
      for (const size of sizesDown(Math.max(largest, armEm), rows === reasons ? armEm : handEm)) {
        const body = texts(column, size, rows, false)
        if (body) return body
      }
    }
    for (let kept = reasons.length - 1; kept >= 0; kept--) {
      const body = texts(
        column,
        handEm,
        [[...reasons.slice(0, kept), `and ${reasons.length - kept} more`].join(' · ')],
        true,
      )
      if (body) return { ...body, shortened: [...new Set<Part>(['reasons', ...body.shortened])] }
    }
    return texts(column, handEm, reasons, true)
  }

  function texts(column: Column, size: number, why: readonly string[], cut: boolean): Sketch | null {
    const breaks = size === handEm
    const strong: Style = { typeface, size, weight: 'strong', breaks }
    const plain: Style = { typeface, size: Math.max(handEm, size * 0.7), weight: 'plain', breaks }
    const rows = [
      ...why.map((text) => ({ part: 'reasons' as const, text, style: strong, most: 6 })),
      ...(machine === ''
        ? []
        : [{ part: 'machine' as const, text: machine, style: plain, most: cut ? 1 : 3 }]),
    ]
    const shapes: Shape[] = []
    const shortened = new Set<Part>()
    let rest = column
    for (const { part, text, style, most } of rows) {
      const set =
        cut && part === 'machine' ? fitText(text, style, rest, most) : setText(text, style, rest, most)
      if (!set) return null
      if (set.shortened) shortened.add(part)
      shapes.push(...textShapes(set.lines, style))
      rest = between(rest, set.bottom, bottomOf(rest))
    }
    return { shapes, shortened: [...shortened] }
  }
}
