import type { Shape } from '../drawing.ts'
import type { ContainerLabel } from '../label-content.ts'
import { type Box, between, bottomOf, type Column, spanAt } from './column.ts'
import { fitText, type Style, setText } from './fit-text.ts'
import { frame, textShapes } from './frame.ts'
import type { About, Part } from './laid.ts'
import { shorten } from './shorten.ts'
import type { SymbolSpots } from './symbol-spots.ts'
import { armEm, ascent, handEm, pitch, sizesDown } from './type-sizes.ts'
import { warningBoxes } from './warning-boxes.ts'

export interface Sketch {
  shapes: Shape[]
  shortened: Part[]
}

/**
 * A bag, from the top: which and how it stands, what and how many, where it goes back, cautions, its digits, and small
 * the job. All in the largest type in which nothing must be cut; when there is none, cut by `concessions`. Null when
 * not even that fits.
 */
export function sketchContainer(
  content: ContainerLabel,
  area: Box,
  spots: SymbolSpots,
  { typeface }: About,
): Sketch | null {
  const largest = Math.min(area.height * 0.17, 10)
  for (const concession of concessions(content)) {
    const base = frame(
      area,
      spots,
      {
        code: content.code,
        footer: concession.footer ? { start: content.job, end: content.date } : null,
        largestCode: Math.min(area.height * 0.26, 16),
      },
      typeface,
    )
    const head = base && headRow(content, base.free, Math.min(area.height * 0.18, 14), typeface)
    if (!head) continue
    const rest = between(base.free, head.bottom, bottomOf(base.free))
    const sizes = concession.cuts ? [handEm] : sizesDown(Math.max(largest, handEm), handEm)
    for (const size of sizes) {
      const body = bodyOf(content, concession, rest, size, typeface)
      if (!body) continue
      const shortened = new Set(body.shortened)
      if (head.shortened) shortened.add('heading')
      if (base.footerShortened || !concession.footer) shortened.add('job')
      return { shapes: [...base.shapes, ...head.shapes, ...body.shapes], shortened: [...shortened] }
    }
  }
  return null
}

/** What may be cut, the next thing only when the ones before were not enough. */
interface Concession {
  cuts: boolean
  whatLines: number
  lots: number
  whereLines: number
  warningLines: number
  footer: boolean
}

function concessions({ what, warnings }: ContainerLabel): Concession[] {
  const none = {
    cuts: false,
    whatLines: 99,
    lots: what.length,
    whereLines: 99,
    warningLines: 99,
    footer: true,
  }
  const steps: Concession[] = [
    none,
    { ...none, cuts: true, whatLines: 3, whereLines: 2 },
    { ...none, cuts: true, whatLines: 2, whereLines: 1, warningLines: 2 },
    { ...none, cuts: true, whatLines: 1, whereLines: 1, warningLines: 1 },
  ]
  const tight = { ...none, cuts: true, whatLines: 1, whereLines: 1, warningLines: 1 }
  for (let lots = Math.min(what.length - 1, 40); lots >= 1; lots--) steps.push({ ...tight, lots })
  const fewest = { ...tight, lots: Math.min(1, what.length) }
  steps.push({ ...fewest, footer: false }, { ...fewest, footer: false, whereLines: 0 })
  if (warnings.length > 1) steps.push({ ...fewest, footer: false, whereLines: 0, warningLines: 0 })
  return steps
}

interface HeadRow {
  shapes: Shape[]
  bottom: number
  shortened: boolean
}

/** `BAG 3  1 of 2` and the status in a box at the right end, on a row of its own where there is no room for both. */
function headRow(
  content: ContainerLabel,
  column: Column,
  largest: number,
  typeface: About['typeface'],
): HeadRow | null {
  const sizes = sizesDown(Math.max(largest, armEm), armEm)
  for (const [n, size] of sizes.entries()) {
    const row = headRowOf(content, column, size, typeface, n > sizes.length / 3)
    if (row) return { ...row, shortened: false }
  }
  const fits = (heading: string) => headRowOf({ ...content, heading }, column, armEm, typeface, true)
  const heading = shorten(content.heading, (candidate) => fits(candidate) !== null)
  const row = heading === null ? null : fits(heading)
  return row && { ...row, shortened: true }
}

function headRowOf(
  { heading, part, status }: ContainerLabel,
  column: Column,
  size: number,
  typeface: About['typeface'],
  inTwoRows: boolean,
): { shapes: Shape[]; bottom: number } | null {
  const top = column.area.y
  const minor = Math.max(size * 0.62, handEm)
  const gap = size * 0.4
  const bottom = top + size * pitch
  const span = spanAt(column, top, bottom)
  const headingWidth = typeface.widthOf(heading, size, 'strong')
  const taken = headingWidth + (part === null ? 0 : typeface.widthOf(part, minor, 'strong') + gap)
  if (taken > span.width) return null
  const baseline = top + ascent * size
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
  const second = spanAt(column, bottom, bottom + minor * 1.4)
  if (!inTwoRows || boxWidth > second.width) return null
  shapes.push(...statusBox(status, second.x, bottom + minor, minor, boxWidth))
  return { shapes, bottom: bottom + minor * 1.4 }
}

function ruled(
  shapes: Shape[],
  { x, width }: { x: number; width: number },
  bottom: number,
): { shapes: Shape[]; bottom: number } {
  const line: Shape = {
    kind: 'line',
    from: { x, y: bottom },
    to: { x: x + width, y: bottom },
    width: ruleWidth,
  }
  return { shapes: [...shapes, line], bottom: bottom + 0.3 }
}

function statusBox(text: string, x: number, baseline: number, size: number, width: number): Shape[] {
  return [
    { kind: 'box', x, y: baseline - size, width, height: size * 1.28, corner: 0.4, line: 0.3 },
    { kind: 'text', x: x + statusPad(size), y: baseline, size, weight: 'strong', text },
  ]
}

function statusPad(size: number): number {
  return size * 0.3
}

// Two dots at 203 dpi, so that every printer prints it.
const ruleWidth = 0.25

function bodyOf(
  { what, where, warnings }: ContainerLabel,
  limits: Concession,
  column: Column,
  size: number,
  typeface: About['typeface'],
): Sketch | null {
  const shapes: Shape[] = []
  const shortened = new Set<Part>()
  let rest = column
  const add = (part: Part, text: string, style: Style, most: number) => {
    const set = limits.cuts ? fitText(text, style, rest, most) : uncut(text, style, rest, most)
    if (!set) return false
    if (set.shortened) shortened.add(part)
    shapes.push(...textShapes(set.lines, style))
    rest = between(rest, set.bottom, bottomOf(rest))
    return true
  }
  const minor = Math.max(handEm, size * 0.8)
  const strong: Style = { typeface, size, weight: 'strong' }
  const plain: Style = { typeface, size: minor, weight: 'plain' }

  for (const lot of what.slice(0, limits.lots)) if (!add('what', lot, strong, limits.whatLines)) return null
  const left = what.length - limits.lots
  if (left > 0) {
    shortened.add('what')
    const lots = left === 1 ? 'and 1 more lot' : `and ${left} more lots`
    if (!add('what', lots, { ...plain, weight: 'strong' }, 1)) return null
  }
  if (where.length > 0) {
    if (limits.whereLines === 0) shortened.add('where')
    else if (!add('where', `→ ${where.join('; ')}`, plain, limits.whereLines)) return null
  }
  const boxes = warningBoxes(warnings, { typeface, size: minor, weight: 'strong' }, rest, limits.warningLines)
  if (!boxes) return null
  if (boxes.shortened) {
    if (!limits.cuts) return null
    shortened.add('warnings')
  }
  return { shapes: [...shapes, ...boxes.shapes], shortened: [...shortened] }
}

function uncut(text: string, style: Style, column: Column, most: number) {
  const set = setText(text, style, column, most)
  return set && { ...set, shortened: false }
}
