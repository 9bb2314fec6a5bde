import type { Drawing, Shape } from '../../../src/label/drawing.ts'
import type { Box } from '../../../src/label/layout/column.ts'
import type { Typeface } from '../../../src/label/typeface.ts'

export interface Footprint extends Box {
  shape: Shape
}

/** The room that each shape of a drawing takes, in millimetres; of a symbol with its quiet zone of four modules. */
export function footprints({ shapes }: Drawing, typeface: Typeface): Footprint[] {
  return shapes.map((shape) => ({ shape, ...boxOf(shape, typeface) }))
}

export function overlap(a: Box, b: Box, slack = 0.02): boolean {
  return (
    a.x + a.width > b.x + slack &&
    b.x + b.width > a.x + slack &&
    a.y + a.height > b.y + slack &&
    b.y + b.height > a.y + slack
  )
}

export function contains(outer: Box, inner: Box, slack = 0.02): boolean {
  return (
    inner.x >= outer.x - slack &&
    inner.y >= outer.y - slack &&
    inner.x + inner.width <= outer.x + outer.width + slack &&
    inner.y + inner.height <= outer.y + outer.height + slack
  )
}

function boxOf(shape: Shape, typeface: Typeface): Box {
  switch (shape.kind) {
    case 'symbol': {
      const quiet = 4 * shape.module
      const side = shape.modules.length * shape.module + 2 * quiet
      return { x: shape.x - quiet, y: shape.y - quiet, width: side, height: side }
    }
    case 'text':
      return inkOf(shape, typeface)
    case 'line': {
      // Upright or level; it ends where it is said to end, without a cap.
      const { from, to, width } = shape
      const [across, along] = from.y === to.y ? [0, width] : [width, 0]
      return {
        x: Math.min(from.x, to.x) - across / 2,
        y: Math.min(from.y, to.y) - along / 2,
        width: Math.abs(from.x - to.x) + across,
        height: Math.abs(from.y - to.y) + along,
      }
    }
    case 'box':
      return {
        x: shape.x - shape.line / 2,
        y: shape.y - shape.line / 2,
        width: shape.width + shape.line,
        height: shape.height + shape.line,
      }
    default:
      throw new Error(`A label has no ${shape.kind}`)
  }
}

/** Where the ink of a text lies, from its outline: control points of curves stand no less far out than the curve. */
function inkOf({ x, y, size, weight, text }: Shape & { kind: 'text' }, typeface: Typeface): Box {
  const numbers = typeface.outlineOf(text, size, weight).match(/-?[\d.]+(?:e-?\d+)?/g) ?? []
  const points = numbers.map(Number)
  const xs = points.filter((_, n) => n % 2 === 0)
  const ys = points.filter((_, n) => n % 2 === 1)
  if (xs.length === 0) return { x, y, width: 0, height: 0 }
  const [left, top] = [xs.reduce((a, b) => Math.min(a, b)), ys.reduce((a, b) => Math.min(a, b))]
  const [right, bottom] = [xs.reduce((a, b) => Math.max(a, b)), ys.reduce((a, b) => Math.max(a, b))]
  return { x: x + left, y: y + top, width: right - left, height: bottom - top }
}
