import type { Shape } from '../drawing.ts'
import type { ContainerLabel } from '../label-content.ts'
import type { Typeface } from '../typeface.ts'
import { type Box, between, bottomOf, type Column } from './column.ts'
import { type Concession, concessions } from './concessions.ts'
import { fitText, type Style, setText } from './fit-text.ts'
import { frame, textShapes } from './frame.ts'
import { headRow } from './head-row.ts'
import type { About, Part, Sketch } from './laid.ts'
import { cutEnd } from './shorten.ts'
import type { SymbolSpots } from './symbol-spots.ts'
import { armEm, handEm, sizesDown } from './type-sizes.ts'
import { warningBoxes } from './warning-boxes.ts'

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
  for (const concession of concessions(content)) {
    const sketch = withConcession(content, concession, area, spots, typeface)
    if (!sketch) continue
    if (!concession.cuts) return sketch
    // Cut whole lines at a time, room may be left: heading and digits take it where that cuts nothing more.
    const larger = [1, 0.75].map((scale) =>
      withConcession(content, { ...concession, scale }, area, spots, typeface),
    )
    return larger.find((each) => each && lettersIn(each) >= lettersIn(sketch)) ?? sketch
  }
  return null
}

function lettersIn({ shapes }: Sketch): number {
  const texts = shapes.map((shape) => (shape.kind === 'text' ? shape.text : ''))
  return texts.join('').replaceAll(' ', '').length
}

function withConcession(
  content: ContainerLabel,
  concession: Concession,
  area: Box,
  spots: SymbolSpots,
  typeface: Typeface,
): Sketch | null {
  const { scale, smallest, cuts, footer } = concession
  const largestCode = Math.max(leastCode, scale * Math.min(area.height * 0.26, 16))
  const largestHeading = Math.max(armEm, scale * Math.min(area.height * 0.18, 14))
  const last = footer ? { start: content.job, end: content.date } : null
  const base = frame(area, spots, { code: content.code, footer: last, largestCode }, typeface)
  const head = base && headRow(content, base.free, largestHeading, typeface)
  if (!head) return null
  const rest = between(base.free, head.bottom, bottomOf(base.free))
  const largest = Math.min(area.height * 0.17, 10)
  for (const size of cuts ? [handEm] : sizesDown(Math.max(largest, smallest), smallest)) {
    const body = bodyOf(content, concession, rest, size, typeface)
    if (!body) continue
    const shortened = new Set(body.shortened)
    if (head.shortened) shortened.add('heading')
    if (base.footerShortened || !footer) shortened.add('job')
    return { shapes: [...base.shapes, ...head.shapes, ...body.shapes], shortened: [...shortened] }
  }
  return null
}

// Digits 3 mm high: with them a bag is found and its code read aloud, so they shrink last.
const leastCode = 4.2

function bodyOf(
  { what, where, warnings }: ContainerLabel,
  limits: Concession,
  column: Column,
  size: number,
  typeface: Typeface,
): Sketch | null {
  const shapes: Shape[] = []
  const shortened = new Set<Part>()
  let rest = column
  const add = (part: Part, text: string, style: Style, most: number) => {
    // What cannot be cut to so few lines, as figures only, takes one or two more.
    const set = limits.ends
      ? endCut(text, style, rest, most)
      : limits.cuts
        ? (fitText(text, style, rest, most) ??
          fitText(text, style, rest, most + 1) ??
          fitText(text, style, rest, most + 2))
        : setText(text, style, rest, most)
    if (!set) return false
    if (set.shortened) shortened.add(part)
    shapes.push(...textShapes(set.lines, style))
    rest = between(rest, set.bottom, bottomOf(rest))
    return true
  }
  const minor = Math.max(handEm, size * 0.8)
  const breaks = size === handEm
  const strong: Style = { typeface, size, weight: 'strong', breaks }
  const plain: Style = { typeface, size: minor, weight: 'plain', breaks }

  for (const lot of what.slice(0, limits.lots)) if (!add('what', lot, strong, limits.whatLines)) return null
  const left = what.length - limits.lots
  if (left > 0) {
    shortened.add('what')
    const more = limits.lots > 0 ? ' more' : ''
    const lots = `${more && 'and '}${left}${more} ${left === 1 ? 'lot' : 'lots'}`
    if (!add('what', lots, { ...plain, weight: 'strong' }, 1)) return null
  }
  if (where.length > 0) {
    if (limits.whereLines === 0) shortened.add('where')
    else if (!add('where', `→ ${where.join('; ')}`, plain, limits.whereLines)) return null
  }
  const boxes = warningBoxes(
    warnings,
    { typeface, size: minor, weight: 'strong', breaks },
    rest,
    limits.warningLines,
  )
  if (!boxes) return null
  if (boxes.shortened) {
    if (!limits.cuts) return null
    shortened.add('warnings')
  }
  return { shapes: [...shapes, ...boxes.shapes], shortened: [...shortened] }
}

/** The text in so many lines, as far as it goes in them. */
function endCut(text: string, style: Style, column: Column, most: number) {
  const setSo = (candidate: string) => setText(candidate, { ...style, breaks: false }, column, most)
  const whole = setSo(text)
  if (whole) return whole
  const short = cutEnd(text, (candidate) => setSo(candidate) !== null)
  const set = short === null ? null : setSo(short)
  return set && { ...set, shortened: true }
}
