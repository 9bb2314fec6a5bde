import type { Drawing, Shape } from '../drawing.ts'

/**
 * The drawing fitted to the dots of a printer: symbols begin on a dot and their modules are whole dots, for a
 * module of 4 dots here and 5 there is what scanners fail on; lines are no thinner than a dot, or they would vanish.
 * @throws RangeError when the modules of a symbol are no whole number of dots at that resolution.
 */
export function onDots(drawing: Drawing, dpi: number): Drawing {
  const dot = 25.4 / dpi
  return { ...drawing, shapes: drawing.shapes.map((shape) => fitted(shape, dot)) }
}

/** Dots to a length in millimetres, to the nearest. */
export function wholeDots(length: number, dpi: number): number {
  return Math.round((length * dpi) / 25.4)
}

function fitted(shape: Shape, dot: number): Shape {
  switch (shape.kind) {
    case 'symbol':
      return {
        ...shape,
        x: nearest(shape.x, dot),
        y: nearest(shape.y, dot),
        module: fittedModule(shape.module, dot),
      }
    case 'line':
      return { ...shape, width: atLeast(dot, shape.width) }
    case 'box':
    case 'circle':
      return { ...shape, line: atLeast(dot, shape.line) }
    default:
      return shape
  }
}

function fittedModule(module: number, dot: number): number {
  const dots = Math.round(module / dot)
  // Over the 33 modules of the largest symbol a hundredth adds up to a third of a dot.
  if (dots < 1 || Math.abs(module / dot - dots) > 0.01) {
    throw new RangeError(`Modules of ${module} mm are ${module / dot} dots; it must be a whole number`)
  }
  return dots * dot
}

function nearest(length: number, dot: number): number {
  return Math.round(length / dot) * dot
}

// No line at all stays none.
function atLeast(dot: number, width: number): number {
  return width > 0 ? Math.max(dot, width) : width
}
