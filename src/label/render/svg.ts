import type { Drawing, Shape } from '../drawing.ts'
import { drawableText, type Typeface } from '../typeface.ts'
import { darkRuns } from './dark-runs.ts'
import { dash } from './dash.ts'

/**
 * The drawing as an SVG file at its true size, black on white. Text comes as outlines: it looks the same in every
 * viewer, and no letter of it can become markup.
 */
export function svgOf(drawing: Drawing, typeface: Typeface): string {
  return svgFile(drawing, typeface, `width="${mm(drawing.width)}mm" height="${mm(drawing.height)}mm"`)
}

/** The drawing as an SVG for a rasteriser, so many whole dots wide and high; the same shapes, in millimetres. */
export function svgOnDots(
  drawing: Drawing,
  typeface: Typeface,
  dots: { width: number; height: number },
): string {
  return svgFile(drawing, typeface, `width="${dots.width}" height="${dots.height}"`)
}

function svgFile({ width, height, shapes }: Drawing, typeface: Typeface, size: string): string {
  const sheet = `<rect width="${mm(width)}" height="${mm(height)}" fill="#fff"/>`
  const drawn = shapes.map((shape) => markup(shape, typeface))
  const opening = `<svg xmlns="http://www.w3.org/2000/svg" ${size} viewBox="0 0 ${mm(width)} ${mm(height)}">`
  return `${[opening, sheet, ...drawn.filter((each) => each !== ''), '</svg>'].join('\n')}\n`
}

function markup(shape: Shape, typeface: Typeface): string {
  switch (shape.kind) {
    case 'symbol':
      return `<path d="${symbolPath(shape)}" shape-rendering="crispEdges"/>`
    case 'text': {
      const path = typeface.outlineOf(drawableText(shape.text, typeface), shape.size, shape.weight)
      const turn = shape.turn ? ` rotate(${shape.turn})` : ''
      const colour = shape.reversed ? ' fill="#fff"' : ''
      return (
        path && `<path d="${path}" transform="translate(${mm(shape.x)} ${mm(shape.y)})${turn}"${colour}/>`
      )
    }
    case 'line': {
      const { from, to, width } = shape
      const straight = from.x === to.x || from.y === to.y
      const path = `<path d="M${mm(from.x)} ${mm(from.y)}L${mm(to.x)} ${mm(to.y)}"`
      return width > 0 ? path + pen(width, shape.dashed, straight) : ''
    }
    case 'box': {
      const { x, y, width, height, corner = 0, line, filled } = shape
      const round = corner > 0 ? ` rx="${mm(Math.min(corner, width / 2, height / 2))}"` : ''
      const box = `<rect x="${mm(x)}" y="${mm(y)}" width="${mm(width)}" height="${mm(height)}"${round}`
      if (filled) return `${box}/>`
      return line > 0 ? box + pen(line, false, round === '') : ''
    }
    case 'circle': {
      const { x, y, radius, line, dashed } = shape
      return line > 0
        ? `<circle cx="${mm(x)}" cy="${mm(y)}" r="${mm(radius)}"${pen(line, dashed, false)}`
        : ''
    }
    case 'polygon':
      return `<polygon points="${shape.points.map(({ x, y }) => `${mm(x)},${mm(y)}`).join(' ')}"/>`
  }
}

function symbolPath({ x, y, module, modules }: Shape & { kind: 'symbol' }): string {
  return darkRuns(modules)
    .map(({ row, from, to }) => {
      const [left, right, top, bottom] = [
        x + from * module,
        x + to * module,
        y + row * module,
        y + (row + 1) * module,
      ]
      return `M${mm(left)} ${mm(top)}H${mm(right)}V${mm(bottom)}H${mm(left)}Z`
    })
    .join('')
}

function pen(width: number, dashed: boolean | undefined, straight: boolean): string {
  const dashes = dashed ? ` stroke-dasharray="${dash.on} ${dash.off}"` : ''
  const edges = straight ? ' shape-rendering="crispEdges"' : ''
  return ` fill="none" stroke="#000" stroke-width="${mm(width)}"${dashes}${edges}/>`
}

// A tenth of a micrometre: at 600 dots to the inch still far below a dot.
function mm(value: number): number {
  return Math.round(value * 10_000) / 10_000
}
