import type { Drawing, Shape } from '../../../src/label/drawing.ts'
import type { Typeface } from '../../../src/label/typeface.ts'

/** The box around what a shape prints, in millimetres. */
export interface Ink {
  shape: Shape
  left: number
  top: number
  right: number
  bottom: number
}

/** The ink of every shape. A text is as high as its outline is, told by the numbers in its path. */
export function inkOf({ shapes }: Drawing, typeface: Typeface): Ink[] {
  return shapes.map((shape) => ({ shape, ...boundsOf(shape, typeface) }))
}

/** What overlaps and must not: parts of one figure (a hole and its cross hair, an arrow) may. */
export function overprinted(inks: readonly Ink[]): string[] {
  return inks.flatMap((one, index) =>
    inks.slice(index + 1).flatMap((other) => {
      const isOneFigure = one.shape.kind === 'line' || other.shape.kind === 'line'
      const hasText = one.shape.kind === 'text' || other.shape.kind === 'text'
      const hasSymbol = one.shape.kind === 'symbol' || other.shape.kind === 'symbol'
      if (isOneFigure && !hasText && !hasSymbol) return []
      return meet(one, other) ? [`${told(one)} and ${told(other)}`] : []
    }),
  )
}

function meet(one: Ink, other: Ink): boolean {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom
}

function told({ shape, left, top }: Ink): string {
  return `${shape.kind === 'text' ? `"${shape.text}"` : shape.kind} at ${left.toFixed(1)}, ${top.toFixed(1)}`
}

function boundsOf(shape: Shape, typeface: Typeface): Omit<Ink, 'shape'> {
  switch (shape.kind) {
    case 'symbol': {
      // With the four light modules on each side that ISO/IEC 18004 asks for.
      const quiet = 4 * shape.module
      const side = shape.modules.length * shape.module
      return around([
        { x: shape.x - quiet, y: shape.y - quiet },
        { x: shape.x + side + quiet, y: shape.y + side + quiet },
      ])
    }
    case 'text':
      return textBounds(shape, typeface)
    case 'line':
      return around([shape.from, shape.to], shape.width / 2)
    case 'polygon':
      return around(shape.points)
    case 'circle':
      return around([shape], shape.radius + shape.line / 2)
    case 'box':
      return around([shape, { x: shape.x + shape.width, y: shape.y + shape.height }], shape.line / 2)
    default:
      return shape satisfies never
  }
}

function textBounds(shape: Extract<Shape, { kind: 'text' }>, typeface: Typeface): Omit<Ink, 'shape'> {
  const path = typeface.outlineOf(shape.text, shape.size, shape.weight)
  const numbers = [...path.matchAll(/-?\d+(?:\.\d+)?(?:e-?\d+)?/g)].map(([number]) => Number(number))
  const points = numbers.flatMap((x, index) => (index % 2 === 0 ? [{ x, y: numbers[index + 1] ?? 0 }] : []))
  const turn = ((shape.turn ?? 0) * Math.PI) / 180
  return around(
    points.map(({ x, y }) => ({
      x: shape.x + x * Math.cos(turn) - y * Math.sin(turn),
      y: shape.y + x * Math.sin(turn) + y * Math.cos(turn),
    })),
  )
}

function around(points: readonly { x: number; y: number }[], more = 0): Omit<Ink, 'shape'> {
  const xs = points.map(({ x }) => x)
  const ys = points.map(({ y }) => y)
  return {
    left: Math.min(...xs) - more,
    top: Math.min(...ys) - more,
    right: Math.max(...xs) + more,
    bottom: Math.max(...ys) + more,
  }
}
