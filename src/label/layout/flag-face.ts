import type { Shape } from '../drawing.ts'
import type { FlagLabel } from '../label-content.ts'
import type { Typeface } from '../typeface.ts'
import { type Box, between, bottomOf, type Column, spanAt } from './column.ts'
import { fitText, type SetText, type Style, setText } from './fit-text.ts'
import { frame, textShapes } from './frame.ts'
import type { Part, Sketch } from './laid.ts'
import type { SymbolSpots } from './symbol-spots.ts'
import { armEm, capHeight, handEm, sizesDown } from './type-sizes.ts'

/** What may give way on a face, the next only when the one before was not enough. */
export type Cut =
  | 'nothing'
  /** Job, what it is, and where the other ends go. */
  | 'others'
  /** The own port too is broken within its words; but it is never shortened, for two may begin alike. */
  | 'words'
export const cuts: readonly Cut[] = ['nothing', 'others', 'words']

/** One face: the letter of the end and its port large, where the other ends go, what it is, digits. */
export function sketchFace(
  content: FlagLabel,
  face: Box,
  spots: SymbolSpots,
  cut: Cut,
  typeface: Typeface,
): Sketch | null {
  const largestCode = Math.min(face.height * 0.22, 9)
  // Before the port is cut, the letter is small.
  const letters = cut === 'nothing' ? letterSizes : [armEm]
  const footers = cut === 'nothing' ? [{ start: content.job, end: '' }, null] : [null]
  return firstOf(footers, (footer) => {
    const base = frame(face, spots, { code: content.code, footer, largestCode }, typeface)
    const body = base && firstOf(letters, (largest) => faceText(content, base.free, typeface, cut, largest))
    if (!body) return null
    const shortened: Part[] =
      footer === null || base.footerShortened ? [...body.shortened, 'job'] : body.shortened
    return { shapes: [...base.shapes, ...body.shapes], shortened }
  })
}

// The largest em of the letter, the next when the text does not fit beside or below it.
const letterSizes = [14, 10, 7, 5, armEm]

function faceText(
  { end, own, others, what }: FlagLabel,
  column: Column,
  typeface: Typeface,
  cut: Cut,
  largest: number,
): Sketch | null {
  const letter = endLetter(end, column, typeface, largest)
  if (!letter) return null
  const whole = cut === 'nothing'
  const sizes = !whole ? [handEm] : sizesDown(Math.max(column.area.height * 0.25, handEm), handEm)
  for (const size of sizes) {
    const minor = Math.max(handEm, size * 0.75)
    const breaks = !whole
    const rows: [Part, string, Style, number][] = [
      ['where', own, { typeface, size, weight: 'strong', breaks }, whole ? 3 : 2],
      ...others.map((other): [Part, string, Style, number] => [
        'others',
        `↔ ${other}`,
        { typeface, size: minor, weight: 'plain', breaks },
        whole ? 3 : 2,
      ]),
      ['what', what, { typeface, size: minor, weight: 'plain', breaks }, whole ? 3 : 1],
    ]
    const body = stack(rows, letter.rest, cut)
    if (body) return { ...body, shapes: [...letter.shapes, ...body.shapes] }
  }
  return null
}

/** The letter at the top left beside the symbol, or below the symbol where it stands larger there. */
function endLetter(
  end: string,
  column: Column,
  typeface: Typeface,
  largest: number,
): { shapes: Shape[]; rest: Column } | null {
  const below = Math.min(bottomOf(column), Math.max(...column.taken.map(({ y, height }) => y + height)))
  const [beside, under] = [column, between(column, below, bottomOf(column))].map((each) =>
    letterIn(end, each, typeface, largest),
  )
  return !beside || (under && under.size > beside.size * 1.2) ? (under ?? null) : beside
}

function letterIn(end: string, column: Column, typeface: Typeface, largest: number) {
  const { y, height } = column.area
  for (const size of sizesDown(Math.max(Math.min(height * 0.5, largest), armEm), armEm)) {
    const width = typeface.widthOf(end, size, 'strong')
    const boxHeight = size * (capHeight + 0.2)
    const span = spanAt(column, y, y + boxHeight)
    if (boxHeight > height || width > span.width) continue
    const baseline = y + size * (capHeight + 0.1)
    const text: Shape = { kind: 'text', x: span.x, y: baseline, size, weight: 'strong', text: end }
    const box = { x: span.x, y, width: width + size * 0.15, height: boxHeight }
    return { size, shapes: [text], rest: { ...column, taken: [...column.taken, box] } }
  }
  return null
}

function stack(rows: [Part, string, Style, number][], column: Column, cut: Cut): Sketch | null {
  const shapes: Shape[] = []
  const shortened = new Set<Part>()
  let rest = column
  for (const [part, text, style, most] of rows) {
    if (text === '') continue
    const setRow = cut === 'nothing' ? setText : fitText
    const set = part === 'where' ? ownPort(text, style, rest, most, cut) : setRow(text, style, rest, most)
    if (!set) {
      // Where the other ends go and what it is are a help; which end this is and its port are not to be missed.
      if (cut === 'nothing' || part === 'where') return null
      shortened.add(part)
      continue
    }
    if (set.shortened) shortened.add(part)
    shapes.push(...textShapes(set.lines, style))
    rest = between(rest, set.bottom, bottomOf(rest))
  }
  return { shapes, shortened: [...shortened] }
}

function ownPort(text: string, style: Style, column: Column, most: number, cut: Cut): SetText | null {
  if (cut !== 'words') return setText(text, { ...style, breaks: false }, column, most)
  return setText(text, { ...style, breaks: 'anywhere' }, column, 6)
}

/** The first sketch that there is. */
export function firstOf<Way>(ways: readonly Way[], sketch: (way: Way) => Sketch | null): Sketch | null {
  for (const way of ways) {
    const drawn = sketch(way)
    if (drawn) return drawn
  }
  return null
}
