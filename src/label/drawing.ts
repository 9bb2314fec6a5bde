/**
 * What a label or a sheet looks like, as data: shapes on a page, in millimetres from its top left corner, x to the
 * right and y down. It is laid out once and then drawn as PDF, SVG or a bitmap.
 */
export interface Drawing {
  width: number
  height: number
  shapes: Shape[]
}

export type Weight = 'plain' | 'strong'

export type Shape =
  /** A QR symbol, its top left module at x, y. The quiet zone around it is the layout's to keep free. */
  | { kind: 'symbol'; x: number; y: number; module: number; modules: readonly (readonly boolean[])[] }
  /** Text on its baseline at x, y; `size` is the em. `turn` in degrees, clockwise around x, y. */
  | {
      kind: 'text'
      x: number
      y: number
      size: number
      weight: Weight
      text: string
      turn?: 90 | 180 | 270 | undefined
      /** White on a dark ground. */
      reversed?: boolean | undefined
    }
  | { kind: 'line'; from: Point; to: Point; width: number; dashed?: boolean | undefined }
  /** `filled` black; otherwise an outline of the line width. */
  | {
      kind: 'box'
      x: number
      y: number
      width: number
      height: number
      corner?: number | undefined
      line: number
      filled?: boolean | undefined
    }
  | { kind: 'circle'; x: number; y: number; radius: number; line: number; dashed?: boolean | undefined }
  /** A closed outline filled black, such as the head of an arrow. */
  | { kind: 'polygon'; points: readonly Point[] }

export interface Point {
  x: number
  y: number
}

/** The drawing with all its shapes moved by dx, dy millimetres, on a page of another size where one is given. */
export function moved(
  { width, height, shapes }: Drawing,
  dx: number,
  dy: number,
  page: { width: number; height: number } = { width, height },
): Drawing {
  return { ...page, shapes: shapes.map((shape) => movedShape(shape, dx, dy)) }
}

function movedShape(shape: Shape, dx: number, dy: number): Shape {
  const at = ({ x, y }: Point): Point => ({ x: x + dx, y: y + dy })
  switch (shape.kind) {
    case 'line':
      return { ...shape, from: at(shape.from), to: at(shape.to) }
    case 'polygon':
      return { ...shape, points: shape.points.map(at) }
    default:
      return { ...shape, ...at(shape) }
  }
}
