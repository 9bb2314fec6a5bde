import { type Drawing, moved, type Point, type Shape } from '../drawing.ts'
import { cornerOf } from '../sheet.ts'
import { labelsOnPage, type Stock } from '../stock.ts'
import type { Typeface } from '../typeface.ts'
import type { Box } from './column.ts'
import { type SetText, type Style, setText } from './fit-text.ts'
import { textShapes } from './frame.ts'
import { handEm, inset, sizesDown } from './type-sizes.ts'

/**
 * A page that shows how far a printer is off: rulers in millimetres from the left and the upper edge of the page, the
 * outlines of all labels, crosses on the corners of the first and the last, and how to read off the shift. All of it is
 * moved by the shift that is in use, so that the page shows what is still left.
 */
export function calibrationPage(
  stock: Stock,
  { typeface, shift }: { typeface: Typeface; shift: { x: number; y: number } },
): Drawing {
  const boxes = Array.from(
    { length: labelsOnPage(stock) },
    (_, place): Box => ({
      ...cornerOf(stock, place),
      ...stock.label,
    }),
  )
  const outlines = boxes.map((box): Shape => ({ kind: 'box', ...box, corner: stock.corner, line: thin }))
  const ends = [boxes[0], boxes.length > 1 ? boxes.at(-1) : undefined].filter((box) => box !== undefined)
  const shapes = [
    ...outlines,
    ...ends.flatMap(cornersOf).flatMap(cross),
    ...ruler(stock, typeface, 'x'),
    ...ruler(stock, typeface, 'y'),
    ...advice(stock, boxes, shift, typeface),
  ]
  return moved({ ...stock.page, shapes }, shift.x, shift.y)
}

const thin = 0.2
const armOfCross = 3

function cornersOf({ x, y, width, height }: Box): Point[] {
  return [
    { x, y },
    { x: x + width, y },
    { x, y: y + height },
    { x: x + width, y: y + height },
  ]
}

function cross({ x, y }: Point): Shape[] {
  return [
    { kind: 'line', from: { x: x - armOfCross, y }, to: { x: x + armOfCross, y }, width: thin },
    { kind: 'line', from: { x, y: y - armOfCross }, to: { x, y: y + armOfCross }, width: thin },
  ]
}

// Page printers leave a few millimetres of every edge white, so that a ruler right at the edge would be lost; a label
// printer prints to the edge, and has no room to spare. Common practice.
function rulerEdge({ page }: Stock): number {
  return Math.min(page.width, page.height) < 120 ? inset : 5
}

const tick = { one: 1, five: 1.6, ten: 2.4 }

/** Ticks at every whole millimetre from the edge of the page, those at tens with their number. */
function ruler(stock: Stock, typeface: Typeface, axis: 'x' | 'y'): Shape[] {
  const edge = rulerEdge(stock)
  const length = axis === 'x' ? stock.page.width : stock.page.height
  const point = (along: number, across: number): Point =>
    axis === 'x' ? { x: along, y: across } : { x: across, y: along }
  const shapes: Shape[] = [{ kind: 'line', from: point(0, edge), to: point(length, edge), width: thin }]
  for (let at = 1; at < length; at++) {
    const reach = at % 10 === 0 ? tick.ten : at % 5 === 0 ? tick.five : tick.one
    shapes.push({ kind: 'line', from: point(at, edge), to: point(at, edge + reach), width: thin })
    const text = String(at)
    const width = typeface.widthOf(text, handEm, 'plain')
    if (at % 10 !== 0 || at + width + 0.5 > length) continue
    const number = axis === 'x' ? { x: at + 0.4, y: edge + 3.2 } : { x: edge + 1.3, y: at - 0.4 }
    shapes.push({ kind: 'text', ...number, size: handEm, weight: 'plain', text })
  }
  return shapes
}

/** All advice in one label where it fits, else a sentence a label; away from the rulers. */
function advice(
  stock: Stock,
  boxes: readonly Box[],
  shift: { x: number; y: number },
  typeface: Typeface,
): Shape[] {
  const texts = adviceTexts(stock, shift)
  const clear = rulerEdge(stock) + 6
  const rooms = boxes.map(({ x, y, width, height }): Box => {
    const [left, top] = [Math.max(x + armOfCross, clear), Math.max(y + armOfCross, clear - 2)]
    return { x: left, y: top, width: x + width - 1 - left, height: y + height - 0.5 - top }
  })
  const inside = rooms.filter((_, place) => place % stock.columns > 0 && place >= stock.columns)
  const [first, ...others] = inside.length > 0 ? inside : rooms
  if (first === undefined) return []
  for (const size of sizesDown(4, handEm)) {
    const shapes = stacked(texts, first, { typeface, size, weight: 'plain' })
    if (shapes) return shapes
  }
  const style: Style = { typeface, size: handEm, weight: 'plain' }
  return texts.flatMap((text, n) => stacked([text], [first, ...others][n] ?? first, style) ?? [])
}

function stacked(texts: readonly string[], room: Box, style: Style): Shape[] | null {
  const shapes: Shape[] = []
  let [y, height] = [room.y, room.height]
  for (const text of texts) {
    const set: SetText | null = setText(text, style, {
      area: { ...room, y, height },
      taken: [],
    })
    if (!set) return null
    shapes.push(...textShapes(set.lines, style))
    height -= set.bottom - y + paragraph
    y = set.bottom + paragraph
  }
  return shapes
}

const paragraph = 0.4

function adviceTexts(stock: Stock, { x, y }: { x: number; y: number }): string[] {
  const now = x === 0 && y === 0 ? '' : ` (add to shift ${x} ${y}, in use here)`
  const say = `Then say: shift X Y${now}`
  if (stock.kind !== 'sheet') {
    return ['20 must lie 20 mm from the left and upper edge. If not: mm to move right X, down Y.', say]
  }
  const full = 'Print at full size (100 %) on plain paper: 20 to 120 must measure 100 mm.'
  const move = 'If not, measure in mm how far it must move: right is X, down is Y; left and up are below 0.'
  if (labelsOnPage(stock) === 1)
    return [full, '20 must lie 20 mm from the left and the upper edge.', move, say]
  return [full, 'Lay it on a sheet of labels, against the light: outlines must lie on labels.', move, say]
}
