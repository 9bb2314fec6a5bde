import type { Drawing } from '../drawing.ts'
import type { Typeface } from '../typeface.ts'
import { onDots, wholeDots } from './on-dots.ts'
import type { Rasteriser } from './rasteriser.ts'
import { svgOnDots } from './svg.ts'

/** Dots as printers take them: eight to a byte, the leftmost the highest bit, 1 black, each row in whole bytes. */
export interface Bitmap {
  width: number
  height: number
  rowBytes: number
  dots: Uint8Array
}

/** What a drawing needs to become dots. */
export interface DotTools {
  typeface: Typeface
  rasteriser: Rasteriser
}

/**
 * The drawing in the dots of a printer.
 * @throws RangeError when the modules of a symbol are no whole number of dots at that resolution.
 */
export function bitmapOf(drawing: Drawing, dpi: number, { typeface, rasteriser }: DotTools): Bitmap {
  const { width, height, rgba } = rasteriser.pixels(dottedSvg(drawing, dpi, typeface))
  const rowBytes = Math.ceil(width / 8)
  const dots = new Uint8Array(rowBytes * height)
  for (let dot = 0; dot < width * height; dot++) {
    if ((rgba[4 * dot] ?? lightest) > lightest) continue
    const x = dot % width
    const byte = Math.floor(dot / width) * rowBytes + (x >> 3)
    dots[byte] = (dots[byte] ?? 0) | (0x80 >> (x & 7))
  }
  return { width, height, rowBytes, dots }
}

/**
 * The drawing as an SVG in whole dots of that resolution.
 * @throws RangeError when the modules of a symbol are no whole number of dots at that resolution.
 */
export function dottedSvg(drawing: Drawing, dpi: number, typeface: Typeface): string {
  const dots = { width: wholeDots(drawing.width, dpi), height: wholeDots(drawing.height, dpi) }
  // The page becomes whole dots too, so that the picture is not stretched to fit them.
  const page = { width: (dots.width * 25.4) / dpi, height: (dots.height * 25.4) / dpi }
  return svgOnDots({ ...onDots(drawing, dpi), ...page }, typeface, dots)
}

// Two fifths covered is black: a stem one dot wide that lies across two keeps at least one of them.
const lightest = 0.6 * 255
