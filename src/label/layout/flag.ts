import { type Drawing, moved, type Shape } from '../drawing.ts'
import type { FlagLabel } from '../label-content.ts'
import { chooseSymbol } from '../symbol/choose-symbol.ts'
import type { Typeface } from '../typeface.ts'
import { type Box, between, bottomOf, type Column, spanAt } from './column.ts'
import { fitText, type SetText, type Style, setText } from './fit-text.ts'
import { frame, textShapes } from './frame.ts'
import type { About, LabelSize, LayoutRefusal, Part, Sketch } from './laid.ts'
import { leastSide } from './symbol-spots.ts'
import { armEm, capHeight, handEm, inset, sizesDown } from './type-sizes.ts'

/** Outer diameter of the hose that a flag is made for when none is said, in millimetres. Common practice. */
const usualHose = 10

/**
 * A label that is folded round a hose: its middle lies on the hose, its ends meet back to back as a flag. The face left
 * of the fold stands once more right of it, at the same distance, so that one covers the other, each upright to its reader.
 */
export function sketchFlag(
  content: FlagLabel,
  { width, height }: LabelSize,
  about: About,
): Sketch | Exclude<LayoutRefusal, { code: 'no-glyph' }> {
  const { dpi, hose = usualHose } = about
  const wrap = Math.PI * hose
  const faceWidth = (width - wrap) / 2 - 2 * inset
  const face: Box = { x: inset, y: inset, width: faceWidth, height: height - 2 * inset }
  const least = leastSide(dpi)
  if (face.width < least) {
    const needed = wrap + 2 * (least + 2 * inset)
    return { code: 'flag-too-short', label: content.name, width, needed, hose }
  }
  const side = Math.min(face.width, face.height, Math.max(least, 0.55 * Math.min(face.width, face.height)))
  const symbol = chooseSymbol({ width: side, height: side, symbols: 2 }, dpi)
  if ('code' in symbol) return { ...symbol, label: content.name }
  const place = { x: face.x + face.width - symbol.size, y: face.y, width: symbol.size, height: symbol.size }
  const left = sketchFace(content, face, { symbol, places: [place] }, about)
  if (!left) return { code: 'label-too-small', label: content.name, width, height }
  const right: Drawing = moved({ width, height, shapes: left.shapes }, width - face.width - 2 * inset, 0)
  return {
    shapes: [...left.shapes, ...right.shapes, ...foldMarks(width, height, wrap)],
    shortened: left.shortened,
  }
}

/** The fold as a dashed line, and short lines at both edges where the hose begins and ends. */
function foldMarks(width: number, height: number, wrap: number): Shape[] {
  const upright = (x: number, from: number, to: number, dashed: boolean): Shape => ({
    kind: 'line',
    from: { x, y: from },
    to: { x, y: to },
    width: 0.25,
    dashed,
  })
  const ends = [(width - wrap) / 2, (width + wrap) / 2]
  return [
    upright(width / 2, inset, height - inset, true),
    ...ends.flatMap((x) => [
      upright(x, inset, inset + tick, false),
      upright(x, height - inset - tick, height - inset, false),
    ]),
  ]
}

const tick = 1.5

type Spots = Parameters<typeof frame>[1]

/** One face: the letter of the end and its port large, where the other ends go, what it is, digits. */
function sketchFace(content: FlagLabel, face: Box, spots: Spots, { typeface }: About): Sketch | null {
  const largestCode = Math.min(face.height * 0.22, 9)
  for (const footer of [{ start: content.job, end: '' }, null]) {
    const base = frame(face, spots, { code: content.code, footer, largestCode }, typeface)
    if (!base) continue
    const ways = letterSizes.map((largest) => ({ cut: false, largest }))
    // Before the port is cut, the letter is small.
    if (!footer) ways.push({ cut: true, largest: armEm })
    const body = firstOf(ways, (way) => faceText(content, base.free, typeface, way))
    if (!body) continue
    const shortened: Part[] =
      footer === null || base.footerShortened ? [...body.shortened, 'job'] : body.shortened
    return { shapes: [...base.shapes, ...body.shapes], shortened }
  }
  return null
}

// The largest em of the letter, the next when the text does not fit beside or below it.
const letterSizes = [14, 10, 7, 5, armEm]

function faceText(
  { end, own, others, what }: FlagLabel,
  column: Column,
  typeface: Typeface,
  { cut, largest }: { cut: boolean; largest: number },
): Sketch | null {
  const letter = endLetter(end, column, typeface, largest)
  if (!letter) return null
  const sizes = cut ? [handEm] : sizesDown(Math.max(column.area.height * 0.25, handEm), handEm)
  for (const size of sizes) {
    const minor = Math.max(handEm, size * 0.75)
    const breaks = cut
    const rows: [Part, string, Style, number][] = [
      ['where', own, { typeface, size, weight: 'strong', breaks }, cut ? 2 : 3],
      ...others.map((other): [Part, string, Style, number] => [
        'others',
        `↔ ${other}`,
        { typeface, size: minor, weight: 'plain', breaks },
        cut ? 1 : 3,
      ]),
      ['what', what, { typeface, size: minor, weight: 'plain', breaks }, cut ? 1 : 3],
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
  const below = Math.max(...column.taken.map(({ y, height }) => y + height))
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

function firstOf<Way>(ways: readonly Way[], sketch: (way: Way) => Sketch | null): Sketch | null {
  for (const way of ways) {
    const drawn = sketch(way)
    if (drawn) return drawn
  }
  return null
}

function stack(rows: [Part, string, Style, number][], column: Column, cut: boolean): Sketch | null {
  const shapes: Shape[] = []
  const shortened = new Set<Part>()
  let rest = column
  for (const [part, text, style, most] of rows) {
    if (text === '') continue
    const set = cut ? cutRow(part, text, style, rest, most) : uncutRow(text, style, rest, most)
    if (!set) {
      // Where the other ends go and what it is are a help; which end this is and its port are not to be missed.
      if (!cut || part === 'where') return null
      shortened.add(part)
      continue
    }
    if (set.shortened) shortened.add(part)
    shapes.push(...textShapes(set.lines, style))
    rest = between(rest, set.bottom, bottomOf(rest))
  }
  return { shapes, shortened: [...shortened] }
}

function uncutRow(text: string, style: Style, column: Column, most: number): SetText | null {
  const set = setText(text, style, column, most)
  return set && { ...set, shortened: false }
}

/** The port is broken where it must be, but never cut: cut, `radiator top` and `radiator bottom` are the same. */
function cutRow(part: Part, text: string, style: Style, column: Column, most: number): SetText | null {
  if (part !== 'where') return fitText(text, style, column, most)
  return uncutRow(text, style, column, most) ?? uncutRow(text, { ...style, breaks: 'anywhere' }, column, 6)
}
