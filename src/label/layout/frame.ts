import { groupedCode } from '../code.ts'
import type { Shape } from '../drawing.ts'
import { labelSymbol, quietZone } from '../symbol/label-symbol.ts'
import type { Typeface } from '../typeface.ts'
import { type Box, between, bottomOf, type Column, spanAt } from './column.ts'
import type { SetLine, Style } from './fit-text.ts'
import { cutEnd } from './shorten.ts'
import type { SymbolSpots } from './symbol-spots.ts'
import { armEm, ascent, capHeight, handEm, pitch, sizesDown } from './type-sizes.ts'

/** What stands on every label: symbols, the code in large digits, and a small last line. The rest is free. */
export interface Frame {
  shapes: Shape[]
  free: Column
  footerShortened: boolean
}

export interface FrameContent {
  code: string
  /** The small last line, of which the end is kept: job and date. Null for none. */
  footer: { start: string; end: string } | null
  /** The largest em of the code, in millimetres. */
  largestCode: number
}

/** Puts symbols, code and last line into the area; null when the code would be too small to be read. */
export function frame(
  area: Box,
  { symbol, places }: SymbolSpots,
  { code, footer, largestCode }: FrameContent,
  typeface: Typeface,
): Frame | null {
  const modules = labelSymbol(code, symbol.version)
  const quiet = quietZone * symbol.module
  const symbols = places.map(
    ({ x, y }): Shape => ({
      kind: 'symbol',
      x: x + quiet,
      y: y + quiet,
      module: symbol.module,
      modules,
    }),
  )
  const column = { area, taken: places.map(cleared) }
  const last = footer && lastLine(footer, column, typeface)
  if (footer && !last) return null
  const set = codeDigits(
    code,
    between(column, area.y, last ? last.top : bottomOf(column)),
    largestCode,
    typeface,
  )
  if (!set) return null
  return {
    shapes: [...symbols, ...set.shapes, ...(last?.shapes ?? [])],
    free: between(column, area.y, set.top),
    footerShortened: last?.shortened ?? false,
  }
}

// Some letters reach out to the left of where they begin, and a symbol moves by half a dot to lie on whole ones.
const clearance = 0.4

function cleared({ x, y, width, height }: Box): Box {
  const all = 2 * clearance
  return { x: x - clearance, y: y - clearance, width: width + all, height: height + all }
}

/** Lines of text as shapes. */
export function textShapes(lines: readonly SetLine[], { size, weight }: Style): Shape[] {
  return lines.map(({ text, x, baseline }) => ({ kind: 'text', x, y: baseline, size, weight, text }))
}

function lastLine(
  { start, end }: { start: string; end: string },
  column: Column,
  typeface: Typeface,
): { shapes: Shape[]; top: number; shortened: boolean } | null {
  const top = bottomOf(column) - handEm * pitch
  const tail = start === '' ? end : end === '' ? '' : ` · ${end}`
  const span = spanAt(column, top, bottomOf(column))
  const tailWidth = typeface.widthOf(tail, handEm, 'plain')
  const fits = (text: string) => typeface.widthOf(text, handEm, 'plain') <= span.width - tailWidth
  const said = fits(start) ? start : cutEnd(start, fits)
  if (said === null) return null
  const text = said + tail
  const shape: Shape = {
    kind: 'text',
    x: span.x,
    y: top + ascent * handEm,
    size: handEm,
    weight: 'plain',
    text,
  }
  return { shapes: text === '' ? [] : [shape], top, shortened: said !== start }
}

/** The digits at the foot of the column, in one row where they stay legible at arm's length, otherwise in two or three. */
function codeDigits(
  code: string,
  column: Column,
  largest: number,
  typeface: Typeface,
): { shapes: Shape[]; top: number } | null {
  const grouped = groupedCode(code)
  const inTwo = [grouped.slice(0, 3), grouped.slice(4)]
  const inThree = grouped.split(' ')
  return (
    digitRows([grouped], column, largest, armEm, typeface) ??
    digitRows(inTwo, column, largest, armEm, typeface) ??
    digitRows(inThree, column, largest, 2.8, typeface) ??
    digitRows([grouped], column, armEm, handEm, typeface)
  )
}

function digitRows(
  rows: readonly string[],
  column: Column,
  largest: number,
  smallest: number,
  typeface: Typeface,
): { shapes: Shape[]; top: number } | null {
  for (const size of sizesDown(Math.max(largest, smallest), smallest)) {
    const row = size * (capHeight + rowGap)
    const top = bottomOf(column) - rows.length * row
    const shapes = rows.flatMap((text, n): Shape[] => {
      const span = spanAt(column, top + n * row, top + (n + 1) * row)
      const width = typeface.widthOf(text, size, 'strong')
      if (top < column.area.y || width > span.width) return []
      return [
        {
          kind: 'text',
          x: span.x,
          y: top + (n + 1) * row - size * rowGap * 0.6,
          size,
          weight: 'strong',
          text,
        },
      ]
    })
    if (shapes.length === rows.length) return { shapes, top }
  }
  return null
}

// Below and above digits, which have no descenders, as part of the em.
const rowGap = 0.2
