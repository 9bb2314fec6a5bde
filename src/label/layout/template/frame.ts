import { groupedCode } from '../../code.ts'
import type { Shape } from '../../drawing.ts'
import { chooseSymbol, type SymbolTooSmall } from '../../symbol/choose-symbol.ts'
import { labelSymbol, quietZone } from '../../symbol/label-symbol.ts'
import { CHECK_LINE_MM, type TemplateContent } from '../../template-content.ts'
import type { Typeface } from '../../typeface.ts'
import { type ArrowTo, arrowShapes, BASELINE } from './draw-places.ts'
import { wrapped } from './measured.ts'

export interface Field {
  x: number
  y: number
  width: number
  height: number
}

/** What stands around the places of a sheet, and the field that it leaves free. */
export interface Frame {
  ok: true
  shapes: Shape[]
  field: Field
}

/** No printer that is known to the trade needs more of the paper than this; common practice. */
export const MARGIN_MM = 10

/** The narrowest sheet: the check line, and a symbol with its code beside it. */
export const LEAST_WIDTH_MM = CHECK_LINE_MM + 2 * MARGIN_MM + 28

const symbolRoom = 23
const rule = 0.35
const edgeStrip = 8

/**
 * Title, home, mark and job at the top; instructions, scale and check line at the bottom; the symbol of the container
 * at the top right and the bottom left, as far apart as the sheet allows; the note at the edge to which arrows point.
 */
export function templateFrame(
  content: TemplateContent,
  page: { width: number; height: number },
  { typeface, arrow, dpi }: { typeface: Typeface; arrow: ArrowTo | null; dpi: number },
): Frame | SymbolTooSmall {
  const symbol = content.container ? symbolOf(content.container, dpi, typeface) : null
  if (symbol && 'code' in symbol) return symbol
  const right = page.width - MARGIN_MM
  const bottom = page.height - MARGIN_MM
  const beside = symbol ? symbol.width + 6 : 0
  const head = headShapes(content, right - MARGIN_MM - beside, typeface)
  const foot = footShapes(content, { left: MARGIN_MM + beside, right, bottom }, typeface)
  const headEnd = Math.max(head.end, MARGIN_MM + (symbol?.height ?? 0) + 2.5)
  const footStart = Math.min(foot.start, bottom - (symbol ? symbol.height + symbol.quiet + rule : 0))
  const inner = {
    x: MARGIN_MM,
    y: headEnd + rule + 3,
    width: right - MARGIN_MM,
    height: footStart - headEnd - 2 * rule - 6,
  }
  const edge = arrow ? edgeShapes(content.edge, arrow, inner, typeface) : { shapes: [], field: inner }
  return {
    ok: true,
    field: edge.field,
    shapes: [
      ...head.shapes,
      ...(symbol?.at(right - symbol.width, MARGIN_MM, 'right') ?? []),
      line(MARGIN_MM, headEnd, right, headEnd),
      ...edge.shapes,
      line(MARGIN_MM, footStart, right, footStart),
      ...(symbol?.at(MARGIN_MM, bottom - symbol.height, 'left') ?? []),
      ...foot.shapes,
    ],
  }
}

interface SymbolBlock {
  /** What stays free on every side of the symbol itself. */
  quiet: number
  width: number
  height: number
  at(x: number, y: number, align: 'left' | 'right'): Shape[]
}

/** The symbol with its code below it; its quiet zone reaches into the margin, where nothing is ever drawn. */
function symbolOf(
  { name, code }: { name: string; code: string },
  dpi: number,
  typeface: Typeface,
): SymbolBlock | SymbolTooSmall {
  const chosen = chooseSymbol({ width: symbolRoom, height: symbolRoom, symbols: 2 }, dpi)
  if ('code' in chosen) return chosen
  const modules = labelSymbol(code, chosen.version)
  const side = modules.length * chosen.module
  const quiet = quietZone * chosen.module
  const texts = [
    { text: groupedCode(code), size: 3.4, weight: 'strong' as const },
    { text: name, size: 2.8, weight: 'plain' as const },
  ].map((each) => {
    return { ...each, width: typeface.widthOf(each.text, each.size, each.weight) }
  })
  const width = Math.max(side, ...texts.map((each) => each.width))
  return {
    quiet,
    width,
    height: side + quiet + 3.4 + 3.6,
    at: (x, y, align) => {
      const start = (own: number) => (align === 'left' ? x : x + width - own)
      return [
        { kind: 'symbol', x: start(side), y, module: chosen.module, modules },
        ...texts.map(
          ({ text, size, weight, width: own }, index): Shape => ({
            kind: 'text',
            x: start(own),
            y: y + side + quiet + 3.4 * BASELINE + index * 4,
            size,
            weight,
            text,
          }),
        ),
      ]
    },
  }
}

function headShapes(
  content: TemplateContent,
  width: number,
  typeface: Typeface,
): { shapes: Shape[]; end: number } {
  const titleSize = typeface.widthOf(content.title, 6.4, 'strong') <= width ? 6.4 : 5
  return column(
    [
      { text: content.title, size: titleSize, weight: 'strong', most: 2, after: 1.4 },
      { text: content.home, size: 4, weight: 'plain', most: 1, after: 0.6 },
      ...(content.mark === null
        ? []
        : [{ text: content.mark, size: 4, weight: 'strong' as const, most: 2, after: 0.6 }]),
      { text: content.job, size: 3.2, weight: 'plain', most: 1, after: 2.2 },
    ],
    { x: MARGIN_MM, y: MARGIN_MM, width },
    typeface,
  )
}

function footShapes(
  content: TemplateContent,
  { left, right, bottom }: { left: number; right: number; bottom: number },
  typeface: Typeface,
): { shapes: Shape[]; start: number } {
  const from = right - CHECK_LINE_MM
  const tick = (x: number): Shape => line(x, bottom - 4, x, bottom, 0.25)
  const [check = ''] = wrapped(
    content.check,
    { width: CHECK_LINE_MM - 4, size: 3, weight: 'plain', most: 1 },
    typeface,
  )
  const texts = [
    { text: content.how, size: 3.4, weight: 'plain' as const, most: 2, after: 0.6 },
    { text: content.scale, size: 3.4, weight: 'strong' as const, most: 1, after: 0 },
  ]
  const height = column(texts, { x: 0, y: 0, width: right - left }, typeface).end
  const top = bottom - 9.5 - height
  return {
    start: top - 2.5,
    shapes: [
      ...column(texts, { x: left, y: top, width: right - left }, typeface).shapes,
      {
        kind: 'text',
        x: from + (CHECK_LINE_MM - typeface.widthOf(check, 3, 'plain')) / 2,
        y: bottom - 3.4,
        size: 3,
        weight: 'plain',
        text: check,
      },
      line(from, bottom - 2, right, bottom - 2, 0.25),
      tick(from),
      tick(right),
    ],
  }
}

interface Paragraph {
  text: string
  size: number
  weight: 'plain' | 'strong'
  most: number
  after: number
}

/** Paragraphs one below the other, and where they end. */
function column(
  paragraphs: readonly Paragraph[],
  { x, y, width }: { x: number; y: number; width: number },
  typeface: Typeface,
): { shapes: Shape[]; end: number } {
  let top = y
  const shapes = paragraphs.flatMap(({ text, size, weight, most, after }) => {
    const lines = wrapped(text, { width, size, weight, most }, typeface)
    const set = lines.map((part, index): Shape => {
      const baseline = top + size * (BASELINE + index * 1.2)
      return { kind: 'text', x, y: baseline, size, weight, text: part }
    })
    top += lines.length > 0 ? size * (1 + (lines.length - 1) * 1.2) + after : 0
    return set
  })
  return { shapes, end: top }
}

/** The note on the side to which the arrows point, with an arrow on each side of it; the field loses the strip. */
function edgeShapes(
  note: string,
  arrow: ArrowTo,
  field: Field,
  typeface: Typeface,
): { shapes: Shape[]; field: Field } {
  const size = 4
  const along = arrow === 'up' || arrow === 'down' ? field.width : field.height
  const [text = ''] = wrapped(note, { width: along - 6 * size, size, weight: 'strong', most: 1 }, typeface)
  const width = typeface.widthOf(text, size, 'strong')
  const strip = edgeStrip - 2
  if (arrow === 'up' || arrow === 'down') {
    const top = arrow === 'up' ? field.y : field.y + field.height - size
    const x = field.x + (field.width - width) / 2
    return {
      shapes: [
        ...arrowShapes(arrow, { x: x - 1.8 * size, y: top }, size),
        { kind: 'text', x, y: top + size * BASELINE + 0.4, size, weight: 'strong', text },
        ...arrowShapes(arrow, { x: x + width + 0.8 * size, y: top }, size),
      ],
      field: { ...field, y: field.y + (arrow === 'up' ? strip : 0), height: field.height - strip },
    }
  }
  const isLeft = arrow === 'left'
  const side = isLeft ? field.x : field.x + field.width - size
  const start = field.y + (field.height - width) / 2
  return {
    shapes: [
      ...arrowShapes(arrow, { x: side, y: start - 1.8 * size }, size),
      isLeft
        ? {
            kind: 'text',
            x: side + size * BASELINE + 0.4,
            y: start + width,
            size,
            weight: 'strong',
            text,
            turn: 270,
          }
        : {
            kind: 'text',
            x: side + size * (1 - BASELINE) - 0.4,
            y: start,
            size,
            weight: 'strong',
            text,
            turn: 90,
          },
      ...arrowShapes(arrow, { x: side, y: start + width + 0.8 * size }, size),
    ],
    field: { ...field, x: field.x + (isLeft ? strip : 0), width: field.width - strip },
  }
}

function line(x1: number, y1: number, x2: number, y2: number, width = rule): Shape {
  return { kind: 'line', from: { x: x1, y: y1 }, to: { x: x2, y: y2 }, width }
}
