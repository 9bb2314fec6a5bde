import { chanceOf } from './chance.ts'
import { type GreyImage, plainImage } from './grey-image.ts'

/** Dots to the millimetre of a printer of 203 dpi, in which all damage is measured. */
export const dotsPerMillimetre = 8

/** A symbol where it is printed, in dots: the corner of its first module, and the side of a module. */
export interface PlacedSymbol {
  left: number
  top: number
  module: number
  modules: boolean[][]
}

/** What is printed on one label, in dots. */
export interface PrintedLabel {
  width: number
  height: number
  symbols: PlacedSymbol[]
}

/** The label as it leaves the printer: symbols, and lines the size of eight-point type where no symbol stands. */
export function labelImage({ width, height, symbols }: PrintedLabel): GreyImage {
  const image = plainImage(width, height, paper)
  drawType(image)
  for (const symbol of symbols) drawSymbol(image, symbol)
  return image
}

export const paper = 0.92
export const ink = 0.06
const quietZone = 4

function drawSymbol(image: GreyImage, { left, top, module, modules }: PlacedSymbol): void {
  const margin = quietZone * module
  const side = modules.length * module + 2 * margin
  fill(image, left - margin, top - margin, side, side, paper)
  modules.forEach((row, down) => {
    row.forEach((dark, across) => {
      if (dark) fill(image, left + across * module, top + down * module, module, module, ink)
    })
  })
}

/** Strokes that stand for letters: a decoder has to tell them from finder patterns all the same. */
function drawType(image: GreyImage): void {
  const chance = chanceOf(8)
  const [lineHeight, xHeight, stroke] = [26, 14, 2]
  for (let top = 8; top + xHeight < image.height - 4; top += lineHeight) {
    for (let left = 8; left < image.width - 20; left += chance.whole(9, 14)) {
      if (chance.between(0, 1) < 0.15) continue
      fill(image, left, top, stroke, xHeight, ink)
      const bars = chance.whole(0, 3)
      for (let bar = 0; bar < bars; bar++) fill(image, left, top + chance.whole(0, 12), 8, stroke, ink)
      if (chance.between(0, 1) < 0.5) fill(image, left + 6, top + chance.whole(-6, 4), stroke, 10, ink)
    }
  }
}

function fill(
  image: GreyImage,
  left: number,
  top: number,
  width: number,
  height: number,
  grey: number,
): void {
  const right = Math.min(left + width, image.width)
  for (let y = Math.max(top, 0); y < Math.min(top + height, image.height); y++) {
    image.pixels.fill(grey, y * image.width + Math.max(left, 0), y * image.width + right)
  }
}
