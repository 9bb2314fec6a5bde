import type { Point, Shape } from '../../drawing.ts'
import type { TemplatePlace } from '../../template-content.ts'
import type { Typeface } from '../../typeface.ts'
import { ARROW, ASIDE, type Cell, CLEARANCE_MM, HAIR_MM, LEADING } from './cell.ts'
import { captionWeight, wrapped } from './measured.ts'

export type ArrowTo = 'up' | 'down' | 'left' | 'right'

/** How far below the top of its line the baseline of a text is, in ems: above it stand capitals and figures. */
export const BASELINE = 0.76

const outline = 0.35
const hairline = 0.18
const corner = 2

/** One place of a sheet: the hole or the box, its name with the arrow beside, and its caption. */
export function placeShapes(
  place: TemplatePlace,
  at: Point,
  cell: Cell,
  { typeface, arrow }: { typeface: Typeface; arrow: ArrowTo | null },
): Shape[] {
  return [...figureShapes(place, at, cell), ...textShapes(place, at, cell, { typeface, arrow })]
}

/** An arrow that fills a square from its top left corner. */
export function arrowShapes(to: ArrowTo, { x, y }: Point, side: number): Shape[] {
  const half = side / 2
  const head = side * 0.45
  // Along the arrow from its middle, and across it.
  const point = (along: number, across: number): Point => {
    if (to === 'right') return { x: x + half + along, y: y + half + across }
    if (to === 'left') return { x: x + half - along, y: y + half + across }
    if (to === 'down') return { x: x + half + across, y: y + half + along }
    return { x: x + half + across, y: y + half - along }
  }
  return [
    { kind: 'line', from: point(-half, 0), to: point(half - head, 0), width: side * 0.12 },
    {
      kind: 'polygon',
      points: [point(half, 0), point(half - head, -head * 0.6), point(half - head, head * 0.6)],
    },
  ]
}

function figureShapes({ diameterMm }: TemplatePlace, { x, y }: Point, { figure }: Cell): Shape[] {
  if (diameterMm === null) {
    const { width, height } = figure
    return [{ kind: 'box', x: x - width / 2, y: y - height / 2, width, height, corner, line: outline }]
  }
  const radius = (diameterMm + CLEARANCE_MM) / 2
  const out = radius + HAIR_MM
  return [
    { kind: 'circle', x, y, radius, line: outline },
    { kind: 'line', from: { x: x - out, y }, to: { x: x + out, y }, width: hairline },
    { kind: 'line', from: { x, y: y - out }, to: { x, y: y + out }, width: hairline },
  ]
}

function textShapes(
  place: TemplatePlace,
  at: Point,
  cell: Cell,
  { typeface, arrow }: { typeface: Typeface; arrow: ArrowTo | null },
): Shape[] {
  const { position, caption } = place
  const weight = captionWeight(place)
  const { nameSize, captionSize, figure } = cell
  const isAbove = cell.arrangement === 'above'
  const column = isAbove ? cell.width : cell.width - figure.width - ASIDE
  const lines =
    caption === null
      ? []
      : wrapped(
          caption,
          { width: column + rounding, size: captionSize, weight, most: cell.captionLines },
          typeface,
        )
  const textHeight = nameSize + lines.length * captionSize * LEADING
  const left = isAbove ? at.x + cell.left : at.x + figure.width / 2 + ASIDE
  const top = isAbove ? at.y + cell.top : at.y - textHeight / 2
  const captionTop = isAbove ? at.y + figure.height / 2 + ASIDE : top + nameSize
  const startOf = (width: number) => (isAbove ? at.x - width / 2 : left)
  const nameWidth = typeface.widthOf(position, nameSize, 'strong')
  const rowWidth = nameWidth + (arrow ? nameSize * (ARROW.gap + ARROW.side) : 0)
  const nameAt = startOf(rowWidth)
  const name: Shape = {
    kind: 'text',
    x: nameAt,
    y: top + nameSize * BASELINE,
    size: nameSize,
    weight: 'strong',
    text: position,
  }
  // The arrow stands in the middle of the height of the figures beside it.
  const arrowAt = {
    x: nameAt + nameWidth + nameSize * ARROW.gap,
    y: top + nameSize * (BASELINE - 0.365 - ARROW.side / 2),
  }
  return [
    name,
    ...(arrow ? arrowShapes(arrow, arrowAt, nameSize * ARROW.side) : []),
    ...lines.map(
      (text, index): Shape => ({
        kind: 'text',
        x: startOf(typeface.widthOf(text, captionSize, weight)),
        y: captionTop + captionSize * (BASELINE + index * LEADING),
        size: captionSize,
        weight,
        text,
      }),
    ),
  ]
}

const rounding = 1e-6
